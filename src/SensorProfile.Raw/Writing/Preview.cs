using SensorProfile.Raw.Containers;

namespace SensorProfile.Raw.Writing;

/// <summary>
/// A small grey image of the frame, 8 bits, three equal colours: every pixel is the mean of a square block, scaled
/// between the frame's extremes.
/// </summary>
internal static class Preview
{
    private const int LargestSide = 128;

    /// <summary>Writes the image.</summary>
    /// <returns>Its directory.</returns>
    public static TiffEntries Directory(TiffBuilder file, DngFrame frame)
    {
        int block = (Math.Max(frame.Width, frame.Height) + LargestSide - 1) / LargestSide;
        (int width, int height) = (frame.Width / block, frame.Height / block);
        (width, height) = (Math.Max(1, width), Math.Max(1, height));
        byte[] picture = Picture(frame, block, width, height);
        TiffEntries entries = file.NewDirectory();
        entries.Longs(Tag.NewSubfileType, 1);
        entries.Longs(Tag.ImageWidth, width);
        entries.Longs(Tag.ImageLength, height);
        entries.Shorts(Tag.BitsPerSample, 8, 8, 8);
        entries.Shorts(Tag.Compression, 1);
        entries.Shorts(Tag.PhotometricInterpretation, 2);
        entries.Shorts(Tag.SamplesPerPixel, 3);
        entries.Shorts(Tag.PlanarConfiguration, 1);
        entries.Longs(Tag.RowsPerStrip, height);
        entries.Longs(Tag.StripOffsets, file.Append(picture));
        entries.Longs(Tag.StripByteCounts, picture.Length);
        return entries;
    }

    private static byte[] Picture(DngFrame frame, int block, int width, int height)
    {
        var means = new double[width * height];
        for (int i = 0; i < means.Length; i++)
            means[i] = Mean(frame, i / width * block, i % width * block, block);
        (double low, double range) = (means.Min(), Math.Max(1, means.Max() - means.Min()));
        return [.. means.SelectMany(mean => Enumerable.Repeat((byte)((mean - low) / range * 255), 3))];
    }

    private static double Mean(DngFrame frame, int top, int left, int block)
    {
        long sum = 0;
        int count = 0;
        for (int row = top; row < Math.Min(top + block, frame.Height); row++)
            foreach (
                ushort sample in frame.Samples.Span.Slice(
                    (row * frame.Width) + left,
                    Math.Min(block, frame.Width - left)
                )
            )
                (sum, count) = (sum + sample, count + 1);
        return (double)sum / count;
    }
}
