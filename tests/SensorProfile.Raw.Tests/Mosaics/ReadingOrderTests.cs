using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Mosaics;

/// <summary>
/// Rows that are asked for a little out of order, as several threads do, are not decoded again and again.
/// </summary>
public sealed class ReadingOrderTests
{
    [Theory]
    [InlineData("lossless JPEG")]
    [InlineData("lossless JPEG, two components, tiles")]
    [InlineData("lossless JPEG, two components, two rows")]
    [InlineData("lossless JPEG, strips, restarts")]
    public void StripsInSwappedOrderAreReadLittleMoreThanTwice(string form)
    {
        DngFrame frame = TestFrames.Noisy(960, 960, 14);
        var bytes = new CountingBytes(TestFrames.Bytes(frame, TestFrames.Forms[form]));
        using RawFile file = RawFile.Open(bytes);
        bytes.Count = 0;
        const int rows = 16;
        var strip = new ushort[rows * 960];
        for (int i = 0; i < 960 / rows; i++)
        {
            int first = (i ^ 1) * rows; // 1, 0, 3, 2, …
            file.ReadRows(first, strip);
            Assert.True(frame.Samples.Span.Slice(first * 960, strip.Length).SequenceEqual(strip));
        }
        // Every strip is decoded once, every second one before that to get past it; windows of 16 kB are read twice at
        // their ends.
        Assert.InRange(bytes.Count, 0, 4 * bytes.Length);
    }

    private sealed class CountingBytes(byte[] bytes) : RawBytes
    {
        public long Count { get; set; }

        public override string File => "test.dng";

        public override long Length => bytes.Length;

        public override int Read(long offset, Span<byte> target)
        {
            int count = (int)Math.Clamp(bytes.Length - offset, 0, target.Length);
            bytes.AsSpan((int)offset, count).CopyTo(target);
            Count += count;
            return count;
        }
    }
}
