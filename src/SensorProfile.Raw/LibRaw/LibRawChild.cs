using System.Runtime.InteropServices;
using System.Text;
using static System.FormattableString;

namespace SensorProfile.Raw.LibRaw;

/// <summary>The child process: reads one file with LibRaw and writes it to standard output.</summary>
/// <remarks>
/// LibRaw decodes hostile input in C; a crash there ends the child and nothing else. The answer is a
/// <see cref="LibRawHeader"/>, followed on request by the samples, two bytes each, low byte first.
/// </remarks>
public static class LibRawChild
{
    /// <summary>First argument of the hidden command.</summary>
    public const string Command = "read-with-libraw";

    private const string WithSamples = "samples",
        WithDng = "dng";

    /// <summary>Arguments that request a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="samples">Whether the samples are requested.</param>
    /// <param name="alsoDng">Whether to read a DNG too, for comparing the two decoders.</param>
    /// <param name="limits">Resource limits of the child.</param>
    internal static string[] Arguments(string path, bool samples, bool alsoDng, LibRawLimits limits) =>
        [Command, path, samples ? WithSamples : "", alsoDng ? WithDng : "", .. limits.Arguments];

    /// <summary>Reads the file and writes the answer.</summary>
    /// <param name="arguments">Arguments from <see cref="LibRawDecoder"/>, including the command.</param>
    /// <param name="answer">Standard output.</param>
    /// <returns>Exit code: 0.</returns>
    public static int Run(IReadOnlyList<string> arguments, Stream answer)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        using var writer = new BinaryWriter(answer, Encoding.UTF8);
        (LibRawLibrary? library, string? problem) = LibRawLibrary.Load();
        if (library is null)
        {
            new LibRawHeader { Problem = problem, Cause = LibRawCause.Missing }.Write(writer);
            return 0;
        }
        var limits = LibRawLimits.Of(
            arguments.ElementAtOrDefault(4),
            arguments.ElementAtOrDefault(5),
            arguments.ElementAtOrDefault(6)
        );
        limits.Bind();
        try
        {
            using LibRawImage image = LibRawImage.Open(library, arguments[1]);
            Check(image, arguments.Contains(WithDng), limits);
            bool samples = arguments.Contains(WithSamples);
            if (samples)
                image.Decode(); // first, so that a failure can still be the answer
            LibRawNotes.Add(HeaderOf(image), arguments[1]).Write(writer);
            if (samples)
                image.Rows(row => writer.Write(MemoryMarshal.AsBytes<ushort>(row)));
        }
        catch (LibRawFailure cannot)
        {
            new LibRawHeader { Problem = cannot.Message, Cause = cannot.Cause }.Write(writer);
        }
        return 0;
    }

    private static LibRawHeader HeaderOf(LibRawImage image)
    {
        return new LibRawHeader
        {
            Width = image.Width,
            Height = image.Height,
            SensorWidth = image.SensorWidth,
            SensorHeight = image.SensorHeight,
            Top = image.Top,
            Left = image.Left,
            ColourFilter = image.ColourFilter() ?? "",
            Model = image.Model,
            Iso = image.Iso,
            ExposureSeconds = image.ExposureSeconds,
            Time = image.Time,
            Exposures = image.Exposures,
        };
    }

    /// <summary>Refuses unusable files by their header, before anything is unpacked.</summary>
    private static void Check(LibRawImage image, bool alsoDng, LibRawLimits limits)
    {
        if (image.IsDng && !alsoDng)
            throw new LibRawFailure("it is a damaged or unusual DNG");
        if (image.ColoursOfAPixel > 1)
            throw new LibRawFailure(
                Invariant($"every pixel of it holds {image.ColoursOfAPixel} colours, not the one of a filter"),
                LibRawCause.Demosaiced
            );
        if (image.ColourFilter() is null)
            throw new LibRawFailure("its colour filter repeats after more than 2 × 2 pixels", LibRawCause.Filter);
        if ((long)image.SensorWidth * image.SensorHeight > limits.Pixels)
            throw new LibRawFailure(
                Invariant(
                    $"it announces {image.SensorWidth} × {image.SensorHeight} pixels, more than a file of its length can hold"
                ),
                LibRawCause.Damaged
            );
    }
}
