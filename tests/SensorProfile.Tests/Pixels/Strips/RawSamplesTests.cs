using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;
using SensorProfile.Raw;
using SensorProfile.Raw.Writing;
using SensorProfile.Tests.Frames;

namespace SensorProfile.Tests.Pixels.Strips;

public sealed class RawSamplesTests : IDisposable
{
    private const int Width = 48,
        Height = 150;
    private readonly RawFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(RawCompression.None)]
    [InlineData(RawCompression.LosslessJpeg)]
    [InlineData(RawCompression.Deflate)]
    public void RowsComeInAnyOrderFromSeveralThreads(RawCompression compression)
    {
        ushort[] samples = Samples();
        Frame[] frames = [.. Enumerable.Range(0, 3).Select(i => Write($"{i}.dng", samples, compression))];
        using FrameStack stack = FrameStack.Open(frames, mostOpenFiles: 2);
        Assert.Empty(stack.Refused);
        Parallel.For(0, 200, i =>
        {
            int row = i * 37 % (Height - 2);
            var rows = new ushort[2 * Width];
            stack.Samples[i % 3].ReadRows(row, rows);
            Assert.Equal(samples.AsSpan(row * Width, 2 * Width).ToArray(), rows);
        });
    }

    [Fact]
    public void WithoutRoomForDecodedFramesTheSamplesAreTheSame()
    {
        ushort[] samples = Samples();
        var frame = new RawSamples(Write("a.dng", samples, RawCompression.LosslessJpeg), keepOpen: true);
        Assert.Null(frame.Fault());
        Assert.True(frame.IsCompressed);
        Assert.Null(frame.Decode(null, 0));
        var rows = new ushort[samples.Length];
        frame.ReadRows(0, rows);
        Assert.Equal(samples, rows);
        Assert.Null(DecodedSamples.Make(100, folder.Full("not there/at all")));
    }

    [Fact]
    public void TheTemporaryFileIsGoneAfterwards()
    {
        using (DecodedSamples decoded = DecodedSamples.Make(1000, folder.Path)!)
        {
            decoded.Write(500, [1, 2, 3]);
            var read = new ushort[3];
            decoded.Read(500, read);
            Assert.Equal([1, 2, 3], read);
        }
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void AFrameWhoseSamplesAreDamagedIsRefusedAndTheOthersGoOn()
    {
        Frame good = Write("good.dng", Samples(), RawCompression.Deflate),
            bad = Write("bad.dng", Samples(), RawCompression.Deflate);
        byte[] bytes = File.ReadAllBytes(bad.Path);
        bytes.AsSpan(100, 40).Fill(0xAA);
        File.WriteAllBytes(bad.Path, bytes);
        using FrameStack stack = FrameStack.Open([bad, good]);
        Assert.Equal(["good.dng"], stack.Samples.Select(s => s.Name));
        Assert.Equal(["bad.dng"], stack.Refused.Select(r => r.Frame.Name));
    }

    [Fact]
    public void CodesAlongACurveAreStraightened()
    {
        ushort[] table = [.. Enumerable.Range(0, 4096).Select(i => (ushort)(3 * i))];
        Frame frame = Write("a.dng", Samples(), RawCompression.None, table);
        using FrameStack stack = FrameStack.Open([frame]);
        var row = new ushort[Width];
        stack.Samples[0].ReadRows(0, row);
        Assert.Equal(Samples()[..Width].Select(s => (ushort)(3 * s)), row);
    }

    private static ushort[] Samples()
    {
        var random = new Random(7);
        return [.. Enumerable.Range(0, Width * Height).Select(_ => (ushort)random.Next(4096))];
    }

    private Frame Write(string name, ushort[] samples, RawCompression compression, ushort[]? table = null)
    {
        string path = folder.Full(name);
        DngWriter.Write(
            path,
            new DngFrame
            {
                Width = Width,
                Height = Height,
                Samples = samples,
                BitsPerSample = 12,
                LinearisationTable = table,
            },
            new DngForm { Compression = compression }
        );
        return new Frame
        {
            Path = path,
            Name = name,
            Format = FrameFormat.Raw,
            Width = Width,
            Height = Height,
        };
    }
}
