using System.Diagnostics;
using System.Globalization;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Benchmarks.Pixels;

/// <summary>
/// Times the engine on the files of a folder and prints one line per run: for the comparison with other programs on the
/// same files.
/// </summary>
internal static class PixelMomentsTiming
{
    public static int Run(string folder, string[] rest, TextWriter output)
    {
        int runs = rest.Length > 0 ? int.Parse(rest[0], CultureInfo.InvariantCulture) : 10;
        int threads = rest.Length > 1 ? int.Parse(rest[1], CultureInfo.InvariantCulture) : Environment.ProcessorCount;
        using var stack = FrameStack.Open([
            .. Directory.GetFiles(folder, "*.fits").Order(StringComparer.Ordinal).Select(FrameOf),
        ]);
        for (int run = 0; run < runs; run++)
        {
            long start = Stopwatch.GetTimestamp();
            var moments = PixelMoments.Measure(stack.Samples, new WalkOptions { Threads = threads });
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            output.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"{seconds:F4} {moments.Mean[^1]} {moments.Variance[^1]}")
            );
        }
        return 0;
    }

    private static Frame FrameOf(string path)
    {
        using var file = FitsFile.Open(path);
        var image = file.FirstImage ?? throw new InvalidDataException($"{path} holds no image.");
        return new Frame
        {
            Path = path,
            Name = Path.GetFileName(path),
            Width = image.Width,
            Height = image.Height,
            Hdu = image.Index,
        };
    }
}
