using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Tests.Pixels.Strips;

public sealed class FrameStackTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("frame-stack-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void WholeNumbersOfAnyStoredTypeAreRead()
    {
        Frame[] frames =
        [
            Write("a.fits", new ushort[] { 0, 1, 255, 7 }),
            Write("b.fits", new byte[] { 0, 1, 255, 7 }),
            Write("c.fits", new short[] { 0, 1, 255, 7 }),
            Write("d.fits", new int[] { 0, 1, 255, 7 }),
            Write("e.fits", new float[] { 0, 1, 255, 7 }),
            Write("f.fits", new double[] { 0, 1, 255, 7 }),
        ];
        using var stack = FrameStack.Open(frames);
        Assert.Empty(stack.Refused);
        Assert.All(stack.Samples, samples =>
        {
            var read = new ushort[4];
            samples.ReadRows(0, read);
            Assert.Equal(new ushort[] { 0, 1, 255, 7 }, read);
        });
    }

    [Fact]
    public void CalibratedFramesAreRefusedByNameAndTheRestGoesOn()
    {
        Frame[] frames =
        [
            Write("fraction.fits", new float[] { 1, 2, 3, 100.25f }),
            Write("good.fits", new ushort[] { 1, 2, 3, 4 }),
            Write("negative.fits", new short[] { 1, -3, 5, 6 }),
            Write("large.fits", new int[] { 1, 2, 65536, 4 }),
            Write("nothing.fits", new float[] { float.NaN, float.NaN, float.NaN, 3 }),
        ];
        using var stack = FrameStack.Open(frames);
        Assert.Equal("good.fits", Assert.Single(stack.Samples).Name);
        Assert.Equal(
            [
                "fraction.fits looks calibrated or stacked: it holds a fractional value (100.25, at column 2, "
                    + "row 2). Only raw frames can be measured; leave it out or give the raw frames instead.",
                "negative.fits looks calibrated or stacked: it holds a negative value (-3, at column 2, row "
                    + "1). Only raw frames can be measured; leave it out or give the raw frames instead.",
                "large.fits looks calibrated or stacked: it holds a value above 65535 (65536, at column 1, "
                    + "row 2). Only raw frames can be measured; leave it out or give the raw frames instead.",
                "nothing.fits has no value at 3 of its 4 pixels, more than half; leave it out.",
            ],
            stack.Refused.Select(refused => refused.Reason)
        );
    }

    [Fact]
    public void MissingAndShortenedFilesAreRefusedByName()
    {
        var (gone, cut) = (Write("gone.fits", new ushort[4]), Write("cut.fits", new ushort[4]));
        File.Delete(gone.Path);
        using (var file = File.OpenWrite(cut.Path))
            file.SetLength(2880 + 3);
        using var stack = FrameStack.Open([gone, cut, Write("good.fits", new ushort[4])]);
        Assert.Single(stack.Samples);
        Assert.Equal(["gone.fits", "cut.fits"], stack.Refused.Select(refused => refused.Frame.Name));
        Assert.Contains("gone.fits", stack.Refused[0].Reason, StringComparison.Ordinal);
        Assert.StartsWith(
            "HDU 0, byte 2883: the file ends inside the data unit",
            stack.Refused[1].Reason,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void MoreThanAThousandFilesAreSummed()
    {
        var frames = Enumerable
            .Range(0, 1100)
            .Select(k => Write($"f{k}.fits", new ushort[] { (ushort)k, 5, 6, 7 }))
            .ToArray();
        using var stack = FrameStack.Open(frames);
        var moments = PixelMoments.Measure(stack.Samples);
        Assert.Equal([549.5f, 5, 6, 7], moments.Mean);
        // variance of 0 … n − 1 with divisor n − 1: n(n + 1)/12
        Assert.Equal([1100f * 1101 / 12, 0, 0, 0], moments.Variance);
    }

    [Theory, InlineData(0), InlineData(1), InlineData(5), InlineData(11)]
    public void FilesThatAreNotKeptOpenGiveTheSame(int mostOpenFiles)
    {
        var frames = Enumerable
            .Range(0, 12)
            .Select(k => Write($"f{k}.fits", new ushort[] { (ushort)(3 * k), 5, (ushort)(60_000 - k * k), 7 }))
            .ToArray();
        using FrameStack all = FrameStack.Open(frames),
            few = FrameStack.Open(frames, mostOpenFiles: mostOpenFiles);
        // Sums and the samples themselves, by groups, as the walk over all darks reads them; and strip by strip.
        Assert.Equal(Walked(all), Walked(few));
        Assert.Equal(
            StripWalker.Walk(all.Samples, Copied).SelectMany(s => s),
            StripWalker.Walk(few.Samples, Copied).SelectMany(s => s)
        );

        static ushort[] Copied(Strip strip) =>
            [.. Enumerable.Range(0, strip.Frames).SelectMany(f => strip.Samples(f).ToArray())];
        static double[] Walked(FrameStack stack) =>
            [
                .. GroupMoments
                    .Walk(
                        [
                            [.. stack.Samples.Take(7)],
                            [.. stack.Samples.Skip(7)],
                        ],
                        strip =>
                        {
                            float[] mean = new float[strip.Pixels],
                                variance = new float[strip.Pixels];
                            List<double> found = [];
                            for (int group = 0; group < 2; group++)
                            {
                                strip.Moments(group, mean, variance);
                                var samples = new ushort[strip.Frames(group)];
                                for (int pixel = 0; pixel < strip.Pixels; pixel++)
                                {
                                    strip.CopyPixel(group, pixel, samples);
                                    found.AddRange([mean[pixel], variance[pixel], .. samples.Select(s => (double)s)]);
                                }
                            }
                            return found;
                        },
                        keepSamples: true
                    )
                    .SelectMany(f => f),
            ];
    }

    [Fact]
    public void AFrameIsReadFromManyThreadsAtOnce()
    {
        ushort[] samples = [.. Enumerable.Range(0, 50 * 40).Select(i => (ushort)(31 * i))];
        string path = Path.Combine(_folder, "shared.fits");
        FitsWriter.Write(path, new FitsImage<ushort>(50, 40, samples));
        using var stack = FrameStack.Open([Lab.FrameOf(path)]);
        Parallel.For(0, 400, (int i) =>
        {
            var row = new ushort[50];
            stack.Samples[0].ReadRows(i % 40, row);
            Assert.Equal(samples[(i % 40 * 50)..(i % 40 * 50 + 50)], row);
        });
    }

    private Frame Write<T>(string name, T[] samples)
        where T : unmanaged
    {
        string path = Path.Combine(_folder, name);
        FitsWriter.Write(path, new FitsImage<T>(2, 2, samples), durable: false);
        return new Frame
        {
            Path = path,
            Name = name,
            Width = 2,
            Height = 2,
        };
    }
}
