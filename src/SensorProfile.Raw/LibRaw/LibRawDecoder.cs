using System.Runtime.InteropServices;
using System.Text;
using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.LibRaw;

/// <summary>
/// Reads makers' own raw formats through the system's LibRaw, in a child process with limits on time and memory.
/// </summary>
public static class LibRawDecoder
{
    private const string Way = "Convert it to DNG.";
    private const string WayOfUnknown =
        "Copy it again from the card in case it is damaged; if its camera is newer than this LibRaw, convert it to DNG.";
    private const string WayOfDemosaiced =
        "Set the camera to full raw files; a sensor that sees three colours in every pixel cannot be measured here: leave it out.";
    private const string Package =
        "Install LibRaw (package libraw20 or libraw23 on Debian, libraw with Homebrew, libraw.dll on Windows; its path "
        + "can be given in SENSORPROFILE_LIBRAW), or convert the file to DNG.";

    /// <summary>What LibRaw reports about a file, without decoding samples.</summary>
    /// <remarks>
    /// Only decoding shows whether the samples around the exposed ones are available: the mosaic from
    /// <see cref="Decode"/> may lack them although this one has them.
    /// </remarks>
    /// <exception cref="RawFormatException">LibRaw is missing or cannot read the file, or the file is cut
    /// short.</exception>
    public static LibRawFrame Describe(string path)
    {
        LibRawFrame frame = Run(path, samples: null, alsoDng: false);
        return frame with { Facts = MakersExif.Complete(frame.Facts, path) };
    }

    /// <summary>Decodes the samples from the first row on, a number of whole rows at a time.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rows">Receives the frame, the index of the first row, and the samples of all columns of the sensor,
    /// in the order of its mosaic.</param>
    /// <exception cref="RawFormatException">LibRaw is missing or cannot read the file.</exception>
    public static LibRawFrame Decode(string path, Action<LibRawFrame, int, ReadOnlyMemory<ushort>> rows) =>
        Run(path, rows, alsoDng: false);

    /// <summary>The same, but also reads a DNG, so that the two decoders can be compared.</summary>
    internal static LibRawFrame Run(
        string path,
        Action<LibRawFrame, int, ReadOnlyMemory<ushort>>? samples,
        bool alsoDng,
        LibRawLimits? limits = null
    )
    {
        limits ??= LibRawLimits.For(new FileInfo(path).Length);
        string[] arguments = LibRawChild.Arguments(path, samples is not null, alsoDng, limits);
        if (LibRawProcess.Start(arguments, limits) is not { } child)
            throw Refused(path, "the program that reads makers' raw files is not beside this one.", Way);
        using (child)
        using (var reader = new BinaryReader(child.Answer, Encoding.UTF8))
        {
            LibRawHeader header = LibRawHeader.Read(reader)
                ?? throw Refused(path, $"LibRaw gave up on it{child.Reason}.", Way);
            if (header.Problem is not null)
                throw Because(path, header);
            if (!header.HasPossibleSize)
                throw Refused(path, "LibRaw gives an impossible size.", Way);
            LibRawFrame frame = LibRawFrame.Of(header);
            if (samples is not null)
                Copy(path, child, frame, samples);
            return frame;
        }
    }

    private static void Copy(
        string path,
        LibRawProcess child,
        LibRawFrame frame,
        Action<LibRawFrame, int, ReadOnlyMemory<ushort>> samples
    )
    {
        const int rowsAtOnce = 64;
        (int width, int height) = (frame.Mosaic.SensorWidth, frame.Mosaic.SensorHeight);
        var rows = new ushort[rowsAtOnce * width];
        for (int row = 0; row < height; row += rowsAtOnce)
        {
            int count = Math.Min(rowsAtOnce, height - row) * width;
            Span<byte> bytes = MemoryMarshal.AsBytes(rows.AsSpan(0, count));
            if (child.Answer.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false) < bytes.Length)
                throw Refused(path, $"LibRaw gave up on its samples{child.Reason}.", Way);
            samples(frame, row, rows.AsMemory(0, count));
        }
    }

    /// <summary>Why LibRaw cannot read the file; "cut short" if the file itself shows that.</summary>
    private static RawFormatException Because(string path, LibRawHeader header)
    {
        if (header.Cause == LibRawCause.Missing)
            return Refused(path, $"{header.Problem}.", Package);
        if (header.Cause != LibRawCause.Other && TruncationCheck.Find(path) is { } cut)
            return cut;
        string problem = $"LibRaw cannot read it: {header.Problem}.";
        return header.Cause switch
        {
            LibRawCause.Damaged => new RawFormatException(
                RawRefusal.Damaged,
                new RawLocation(path),
                problem,
                TiffDirectory.Repair
            ),
            LibRawCause.Unknown => Refused(path, problem, WayOfUnknown),
            LibRawCause.Filter => Refused(path, problem, RawColourFilter.Remedy),
            LibRawCause.Demosaiced => new RawFormatException(
                RawRefusal.Demosaiced,
                new RawLocation(path),
                problem,
                WayOfDemosaiced
            ),
            _ => Refused(path, problem, Way),
        };
    }

    private static RawFormatException Refused(string path, string problem, string remedy) =>
        new(RawRefusal.UnknownCoding, new RawLocation(path), problem, remedy);
}
