using System.Runtime.InteropServices;
using System.Text;
using static System.FormattableString;

namespace SensorProfile.Raw.LibRaw;

/// <summary>The work of the child process: one file, read with LibRaw and written to standard output.</summary>
/// <remarks>
/// LibRaw decodes hostile input in C; what goes wrong there ends the child and no more. The answer is a
/// <see cref="LibRawHeader"/>, then, when asked for, the samples, two bytes each, low byte first.
/// </remarks>
public static class LibRawChild
{
    /// <summary>First argument of the hidden command.</summary>
    public const string Command = "read-with-libraw";

    private const string WithSamples = "samples",
        WithDng = "dng";

    /// <summary>Arguments that ask for a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="samples">Whether its samples are wanted.</param>
    /// <param name="alsoDng">Whether a DNG is read, too: to compare the two ways.</param>
    /// <param name="limits">What it may use up.</param>
    internal static string[] Arguments(string path, bool samples, bool alsoDng, LibRawLimits limits) =>
        [Command, path, samples ? WithSamples : "", alsoDng ? WithDng : "", .. limits.Arguments];

    /// <summary>Reads the file and answers.</summary>
    /// <param name="arguments">What <see cref="LibRawDecoder"/> passed, the command included.</param>
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
                image.Decode(); // first, so that the answer can still be that it cannot be done
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

    /// <summary>Refuses by its header, before anything is unpacked, what cannot serve.</summary>
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
