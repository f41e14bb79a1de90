using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Mosaics;

/// <summary>What is written in any form is read back sample by sample, in any order of rows.</summary>
public sealed class RoundTripTests
{
    public static TheoryData<string, int> Cases
    {
        get
        {
            var cases = new TheoryData<string, int>();
            foreach (string form in TestFrames.Forms.Keys)
            foreach (int bits in new[] { 8, 10, 12, 14, 16 })
                cases.Add(form, bits);
            return cases;
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void EverySampleComesBack(string form, int bits)
    {
        DngFrame frame = TestFrames.Noisy(150, 98, bits);
        Assert.Equal(frame.Samples.ToArray(), TestFrames.Read(TestFrames.Bytes(frame, TestFrames.Forms[form])));
    }

    [Theory, MemberData(nameof(Cases))]
    public void RowsOfTheActiveAreaComeInAnyOrderAndAfterParking(string form, int bits)
    {
        DngFrame frame = TestFrames.Noisy(150, 98, bits) with { ActiveArea = new RawArea(3, 11, 95, 148) };
        using RawFile file = RawFile.Open(new MemoryBytes(TestFrames.Bytes(frame, TestFrames.Forms[form])));
        (int width, int height) = (file.Mosaic.Width, file.Mosaic.Height);
        Assert.Equal((137, 92), (width, height));
        foreach (var (first, rows) in new[] { (0, 5), (5, 40), (50, 42), (2, 3), (91, 1), (0, 92), (88, 0) })
        {
            var read = new ushort[rows * width];
            file.ReadRows(first, read);
            for (int row = 0; row < rows; row++)
                Assert.Equal(
                    frame.Samples.Slice(((first + row + 3) * 150) + 11, width).ToArray(),
                    read.AsSpan(row * width, width)
                );
            file.Park();
        }
    }

    [Fact]
    public void EveryPredictorWithEveryNumberOfComponentsAndRestartsComesBack()
    {
        DngFrame frame = TestFrames.Noisy(96, 64, 14, seed: 2);
        for (int predictor = 1; predictor <= 7; predictor++)
        for (int components = 1; components <= 4; components++)
        for (int rows = 1; rows <= 2; rows++)
            foreach (int restart in new[] { 0, 1, 5 })
            {
                var form = new DngForm
                {
                    Compression = RawCompression.LosslessJpeg,
                    JpegPredictor = predictor,
                    JpegComponents = components,
                    JpegRowsPerLine = rows,
                    JpegRestartLines = restart,
                };
                Assert.True(
                    frame.Samples.Span.SequenceEqual(TestFrames.Read(TestFrames.Bytes(frame, form))),
                    form.ToString()
                );
            }
    }

    [Fact] // the widest differences, and prediction that wraps around, in components and lines of any kind
    public void SixteenBitsInSeveralComponentsWithRestartsComeBack()
    {
        var random = new Random(7);
        var samples = new ushort[96 * 64];
        foreach (ref ushort sample in samples.AsSpan())
            sample = (ushort)(random.Next(3) == 0 ? random.Next(65536) : 32768 * random.Next(2));
        DngFrame frame = TestFrames.Noisy(96, 64, 16) with { Samples = samples };
        for (int predictor = 1; predictor <= 7; predictor++)
            foreach (int components in new[] { 2, 3, 4 })
            foreach (bool bigEndian in new[] { false, true })
            {
                var form = new DngForm
                {
                    Compression = RawCompression.LosslessJpeg,
                    IsBigEndian = bigEndian,
                    JpegPredictor = predictor,
                    JpegComponents = components,
                    JpegRestartLines = 3,
                    TileSide = 48,
                };
                Assert.Equal(samples, TestFrames.Read(TestFrames.Bytes(frame, form)));
            }
    }

    [Theory] // tiles that stick out to the right and below
    [
        InlineData(1, 1),
        InlineData(15, 17),
        InlineData(16, 16),
        InlineData(17, 15),
        InlineData(63, 65),
        InlineData(100, 33)
    ]
    public void TilesWithPartialEdgesComeBack(int width, int height)
    {
        var random = new Random(width * height);
        var samples = new ushort[width * height];
        foreach (ref ushort sample in samples.AsSpan())
            sample = (ushort)random.Next(4096);
        var frame = new DngFrame
        {
            Width = width,
            Height = height,
            BitsPerSample = 12,
            Samples = samples,
        };
        foreach (
            RawCompression compression in new[]
            {
                RawCompression.None,
                RawCompression.LosslessJpeg,
                RawCompression.Deflate,
            }
        )
        foreach (bool packed in new[] { false, true })
            if (!packed || compression == RawCompression.None)
                Assert.Equal(
                    samples,
                    TestFrames.Read(
                        TestFrames.Bytes(
                            frame,
                            new DngForm
                            {
                                Compression = compression,
                                TileSide = 16,
                                IsPacked = packed,
                            }
                        )
                    )
                );
    }

    [Fact]
    public void EveryWidthComesBackPackedInAnyNumberOfBits()
    {
        for (int bits = 8; bits <= 16; bits++)
        for (int width = 3; width <= 40; width++)
        {
            DngFrame frame = TestFrames.Noisy(width, 5, bits, width);
            Assert.Equal(
                frame.Samples.ToArray(),
                TestFrames.Read(TestFrames.Bytes(frame, new DngForm { IsPacked = true }))
            );
        }
    }

    [Fact]
    public void SixteenBitNoiseWithDifferencesOfAllSizesComesBack()
    {
        var random = new Random(3);
        var samples = new ushort[64 * 64];
        foreach (ref ushort sample in samples.AsSpan())
            sample = (ushort)random.Next(65536);
        (samples[70], samples[71], samples[72]) = (0, 32768, 0); // a difference of −32768, which has no bits of its own
        var frame = new DngFrame
        {
            Width = 64,
            Height = 64,
            BitsPerSample = 16,
            Samples = samples,
        };
        for (int predictor = 1; predictor <= 7; predictor++)
            Assert.Equal(
                samples,
                TestFrames.Read(
                    TestFrames.Bytes(
                        frame,
                        new DngForm { Compression = RawCompression.LosslessJpeg, JpegPredictor = predictor }
                    )
                )
            );
    }

    [Fact]
    public void AFrameOfOneValueComesBack()
    {
        var frame = new DngFrame
        {
            Width = 32,
            Height = 16,
            BitsPerSample = 12,
            Samples = Enumerable.Repeat((ushort)2048, 512).ToArray(),
        };
        foreach (DngForm form in TestFrames.Forms.Values)
            Assert.Equal(frame.Samples.ToArray(), TestFrames.Read(TestFrames.Bytes(frame, form)));
    }
}
