using System.Runtime.InteropServices;
using System.Text;

namespace SensorProfile.Raw.LibRaw;

/// <summary>
/// Reads raw files of makers' own formats through the LibRaw that the system has, in a child process with limits of
/// time and memory.
/// </summary>
public static class LibRawDecoder
{
    private const string Way = "Convert it to DNG.";
    private const string Package =
        "Install LibRaw (package libraw20 or libraw23 on Debian, libraw with Homebrew, libraw.dll on Windows; its path "
        + "can be given in SENSORPROFILE_LIBRAW), or convert the file to DNG.";

    /// <summary>What LibRaw says of a file; no sample is decoded.</summary>
    /// <exception cref="RawFormatException">LibRaw is missing or cannot read it.</exception>
    public static LibRawFrame Describe(string path) => Run(path, samples: null, alsoDng: false);

    /// <summary>
    /// Decodes the samples that see light, row by row from the first, a number of whole rows at once.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="rows">Takes the index of the first row and the samples.</param>
    /// <exception cref="RawFormatException">LibRaw is missing or cannot read it.</exception>
    public static LibRawFrame Decode(string path, Action<int, ReadOnlyMemory<ushort>> rows) =>
        Run(path, rows, alsoDng: false);

    /// <summary>As the others; a DNG is read, too, so that the two ways can be compared.</summary>
    internal static LibRawFrame Run(
        string path,
        Action<int, ReadOnlyMemory<ushort>>? samples,
        bool alsoDng,
        LibRawLimits? limits = null
    )
    {
        limits ??= LibRawLimits.Ordinary;
        string[] arguments = LibRawChild.Arguments(path, samples is not null, alsoDng, limits);
        if (LibRawProcess.Start(arguments, limits) is not { } child)
            throw Refused(path, "the program that reads makers' raw files is not beside this one.", Way);
        using (child)
        using (var reader = new BinaryReader(child.Answer, Encoding.UTF8))
        {
            LibRawHeader header = LibRawHeader.Read(reader)
                ?? throw Refused(path, $"LibRaw gave up on it{child.Reason}.", Way);
            if (header.Problem is { } problem)
                throw Refused(
                    path,
                    header.IsMissing ? $"{problem}." : $"LibRaw cannot read it: {problem}.",
                    header.IsMissing ? Package : Way
                );
            if (header.Width is < 1 or > ushort.MaxValue || header.Height is < 1 or > ushort.MaxValue)
                throw Refused(path, "LibRaw gives an impossible size.", Way);
            if (samples is not null)
                Copy(path, child, header, samples);
            return LibRawFrame.Of(header);
        }
    }

    private static void Copy(
        string path,
        LibRawProcess child,
        LibRawHeader header,
        Action<int, ReadOnlyMemory<ushort>> samples
    )
    {
        const int rowsAtOnce = 64;
        var rows = new ushort[rowsAtOnce * header.Width];
        for (int row = 0; row < header.Height; row += rowsAtOnce)
        {
            int count = Math.Min(rowsAtOnce, header.Height - row) * header.Width;
            Span<byte> bytes = MemoryMarshal.AsBytes(rows.AsSpan(0, count));
            if (child.Answer.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false) < bytes.Length)
                throw Refused(path, $"LibRaw gave up on its samples{child.Reason}.", Way);
            samples(row, rows.AsMemory(0, count));
        }
    }

    private static RawFormatException Refused(string path, string problem, string remedy) =>
        new(RawRefusal.UnknownCoding, new RawLocation(path), problem, remedy);
}
