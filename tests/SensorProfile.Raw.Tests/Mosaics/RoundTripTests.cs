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
