using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>
/// A file of some kilobytes that unpacks to 96 million pixels: all its tiles are the same lossless JPEG. LibRaw decodes
/// it; what stops it is the limits.
/// </summary>
public sealed class LibRawLimitsTests : IDisposable
{
    private const int Tile = 128,
        TilesAcross = 96,
        TilesDown = 64; // 12288 × 8192 pixels: 192 MiB as 16-bit samples
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [LibRawTheory, InlineData(64)]
    public void MemoryBeyondTheLimitIsRefusedByTheSystem(int mebibytes)
    {
        RawFormatException refusal = Assert.Throws<RawFormatException>(() =>
            Read(new LibRawLimits((long)mebibytes << 20, 60))
        );
        Assert.StartsWith("bomb.dng: LibRaw ", refusal.Message, StringComparison.Ordinal);
        Assert.EndsWith(" Convert it to DNG.", refusal.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("MiB", refusal.Message, StringComparison.Ordinal); // not by the look every 100 ms
    }

    [LibRawTheory, InlineData(0)]
    public void WorkBeyondTheLimitIsEndedAndTheReasonSaid(int seconds)
    {
        RawFormatException refusal = Assert.Throws<RawFormatException>(() => Read(new LibRawLimits(3L << 30, seconds)));
        Assert.Contains("LibRaw gave up on it", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("(more than 0 s of work). Convert it to DNG.", refusal.Message, StringComparison.Ordinal);
    }

    [LibRawTheory, InlineData("12288 × 8192 pixels, more than a file of its length can hold. Copy the file again")]
    public void MorePixelsThanTheFileCanHoldAreNotUnpacked(string words)
    {
        RawFormatException refusal = Assert.Throws<RawFormatException>(() => Read(null));
        Assert.Contains("LibRaw cannot read it: it announces " + words, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(RawRefusal.Damaged, refusal.Refusal);
    }

    /// <summary>A few kilobytes may not take 400 MB or 5 s; a frame of 24 Mpixel must be decoded, with 8 + 2 bytes each.</summary>
    [Fact]
    public void TheLimitsGrowWithTheLengthOfTheFile()
    {
        var few = LibRawLimits.For(20_000);
        Assert.InRange(few.Bytes, 200_000_000, 300_000_000);
        Assert.InRange(few.Seconds, 4, 4);
        var frame = LibRawLimits.For(20_000_000);
        Assert.InRange(frame.Pixels, 24_000_000, long.MaxValue);
        Assert.InRange(frame.Bytes, 24_000_000 * 10L, 3L << 30);
        Assert.InRange(frame.Seconds, 10, 60);
        Assert.Equal(LibRawLimits.Ordinary with { Pixels = 32L << 30 }, LibRawLimits.For(1L << 30));
    }

    /// <summary>The child alone, with nobody to watch it: the system ends it.</summary>
    [LibRawTheory(linuxOnly: true), InlineData(0)]
    public void TheSystemEndsAChildThatNobodyWatches(int seconds)
    {
        string path = Bomb();
        string[] arguments = LibRawChild.Arguments(path, true, true, new LibRawLimits(3L << 30, seconds));
        CommandRun run = (folder.Command with { OnItsOwn = true }).Run(arguments);
        Assert.Equal(128 + 9, run.ExitCode); // SIGKILL
    }

    private void Read(LibRawLimits? limits) => LibRawDecoder.Run(Bomb(), (_, _, _) => { }, alsoDng: true, limits);

    private string Bomb()
    {
        var random = new Random(3);
        var frame = new DngFrame
        {
            Width = Tile,
            Height = Tile,
            Samples = Enumerable.Range(0, Tile * Tile).Select(_ => (ushort)random.Next(4096)).ToArray(),
            BitsPerSample = 12,
            ColourFilter = new RawColourFilter(RawColour.Red, RawColour.Green, RawColour.Green, RawColour.Blue),
        };
        string path = folder["bomb.dng"];
        using FileStream stream = File.Create(path);
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries mosaic = file.NewDirectory();
        var form = new DngForm { Compression = RawCompression.LosslessJpeg, TileSide = Tile };
        byte[] tile = LosslessJpegEncoder.Encode(frame.Samples.ToArray(), Tile, frame.BitsPerSample, form);
        long at = file.Append(tile);
        SegmentWriter.Write(file, mosaic, frame, form);
        DngTags.AddMosaic(mosaic, frame);
        DngTags.AddCamera(mosaic, frame);
        mosaic.Longs(Tag.ImageWidth, Tile * TilesAcross);
        mosaic.Longs(Tag.ImageLength, Tile * TilesDown);
        mosaic.Longs(Tag.TileOffsets, [.. Enumerable.Repeat(at, TilesAcross * TilesDown)]);
        mosaic.Longs(Tag.TileByteCounts, [.. Enumerable.Repeat((long)tile.Length, TilesAcross * TilesDown)]);
        file.Finish(file.Append(mosaic));
        return path;
    }
}
