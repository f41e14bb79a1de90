using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>Small frames of a synthetic camera and the forms in which they are written.</summary>
internal static class TestFrames
{
    /// <summary>A frame with a smooth level, noise, single bright pixels and both extremes.</summary>
    public static DngFrame Noisy(int width, int height, int bits, int seed = 1)
    {
        var random = new Random(seed);
        int most = (1 << bits) - 1;
        var samples = new ushort[width * height];
        for (int i = 0; i < samples.Length; i++)
        {
            double level =
                (most * 0.1)
                + (most * 0.2 * (i % width) / width)
                + (most * 0.01 * (random.NextDouble() + random.NextDouble() - 1));
            samples[i] = (ushort)(random.Next(200) == 0 ? random.Next(most + 1) : level);
        }
        (samples[width + 1], samples[width + 2]) = (0, (ushort)most);
        return new DngFrame
        {
            Width = width,
            Height = height,
            BitsPerSample = bits,
            Samples = samples,
            ColourFilter = new RawColourFilter(RawColour.Red, RawColour.Green, RawColour.Green, RawColour.Blue),
            WhiteLevel = most,
            BlackLevel = new RawBlackLevel
            {
                PatternRows = 1,
                PatternColumns = 1,
                Pattern = [64],
            },
            Facts = new RawFacts
            {
                Camera = "Fell-24C",
                ExposureSeconds = 30,
                Iso = 800,
            },
        };
    }

    /// <summary>The forms that tests of the whole path go through, by name.</summary>
    public static IReadOnlyDictionary<string, DngForm> Forms { get; } =
        new Dictionary<string, DngForm>
        {
            ["words"] = new(),
            ["words, big-endian, preview"] = new() { IsBigEndian = true, HasPreview = true },
            ["packed"] = new() { IsPacked = true },
            ["packed, big-endian, strips"] = new()
            {
                IsPacked = true,
                IsBigEndian = true,
                RowsPerStrip = 7,
            },
            ["tiles"] = new() { TileSide = 48 },
            ["packed tiles"] = new() { TileSide = 32, IsPacked = true },
            ["lossless JPEG"] = new() { Compression = RawCompression.LosslessJpeg },
            ["lossless JPEG, two components, tiles"] = new()
            {
                Compression = RawCompression.LosslessJpeg,
                JpegComponents = 2,
                TileSide = 64,
                HasPreview = true,
            },
            ["lossless JPEG, two components, two rows"] = new()
            {
                Compression = RawCompression.LosslessJpeg,
                JpegComponents = 2,
                JpegRowsPerLine = 2,
                JpegPredictor = 6,
            },
            ["lossless JPEG, strips, restarts"] = new()
            {
                Compression = RawCompression.LosslessJpeg,
                RowsPerStrip = 30,
                JpegRestartLines = 8,
                JpegPredictor = 7,
                IsBigEndian = true,
            },
            ["Deflate"] = new() { Compression = RawCompression.Deflate, RowsPerStrip = 16 },
            ["Deflate, differences, tiles"] = new()
            {
                Compression = RawCompression.Deflate,
                DifferenceDistance = 1,
                TileSide = 64,
            },
            ["Deflate, differences of one colour, big-endian"] = new()
            {
                Compression = RawCompression.Deflate,
                DifferenceDistance = 2,
                IsBigEndian = true,
            },
            ["Deflate, differences, big-endian"] = new()
            {
                Compression = RawCompression.Deflate,
                DifferenceDistance = 1,
                IsBigEndian = true,
            },
            ["Deflate, differences of four columns"] = new()
            {
                Compression = RawCompression.Deflate,
                DifferenceDistance = 4,
            },
        };

    /// <summary>The bytes of a file.</summary>
    public static byte[] Bytes(DngFrame frame, DngForm form)
    {
        using var stream = new MemoryStream();
        DngWriter.Write(stream, frame, form);
        return stream.ToArray();
    }

    /// <summary>All stored samples of a file in memory.</summary>
    public static ushort[] Read(byte[] bytes)
    {
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        var samples = new ushort[file.Mosaic.SensorWidth * file.Mosaic.SensorHeight];
        file.ReadSensorRows(0, samples);
        return samples;
    }
}
