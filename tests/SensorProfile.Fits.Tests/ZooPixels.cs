using System.Globalization;
using System.Numerics;
using System.Text.Json;

namespace SensorProfile.Fits.Tests;

/// <summary>Compares the pixels of an HDU with expected.json: integers exactly, floats to 1e-12.</summary>
internal static class ZooPixels
{
    public static void AssertAgree(FitsHdu hdu, JsonElement expected)
    {
        JsonElement pixels = expected.GetProperty("pixels");
        if (pixels.GetProperty("kind").GetString() == "integer")
        {
            if (hdu.PixelType == FitsPixelType.UInt64)
                AssertIntegers(Read<ulong>(hdu, hdu.ReadRows), pixels);
            else
                AssertIntegers(Read<long>(hdu, hdu.ReadRows), pixels);
        }
        else
        {
            AssertFloats(Read<double>(hdu, hdu.ReadRows), pixels);
        }
    }

    public delegate void Reader<T>(int firstRow, Span<T> pixels, int plane);

    public static T[] Read<T>(FitsHdu hdu, Reader<T> reader)
    {
        int plane = hdu.Width * hdu.Height;
        var all = new T[plane * hdu.Planes];
        for (int i = 0; i < hdu.Planes; i++)
            reader(0, all.AsSpan(i * plane, plane), i);
        return all;
    }

    private static void AssertIntegers<T>(T[] values, JsonElement pixels)
        where T : IBinaryInteger<T>
    {
        BigInteger sum = values.Aggregate(BigInteger.Zero, (s, v) => s + BigInteger.CreateChecked(v));
        Assert.Equal(pixels.GetProperty("n").GetInt32(), values.Length);
        Assert.Equal(Text(pixels, "min"), values.Min()!.ToString(null, CultureInfo.InvariantCulture));
        Assert.Equal(Text(pixels, "max"), values.Max()!.ToString(null, CultureInfo.InvariantCulture));
        Assert.Equal(Text(pixels, "first"), values[0].ToString(null, CultureInfo.InvariantCulture));
        Assert.Equal(Text(pixels, "last"), values[^1].ToString(null, CultureInfo.InvariantCulture));
        Assert.Equal(Text(pixels, "sum"), sum.ToString(CultureInfo.InvariantCulture));
    }

    private static void AssertFloats(double[] values, JsonElement pixels)
    {
        double[] finite = [.. values.Where(double.IsFinite)];
        Assert.Equal(pixels.GetProperty("n").GetInt32(), values.Length);
        Assert.Equal(pixels.GetProperty("n_not_finite").GetInt32(), values.Length - finite.Length);
        Assert.Equal(pixels.GetProperty("n_nan").GetInt32(), values.Count(double.IsNaN));
        Assert.Equal(pixels.GetProperty("n_pos_inf").GetInt32(), values.Count(double.IsPositiveInfinity));
        AssertNear(pixels, "min", finite.Min());
        AssertNear(pixels, "max", finite.Max());
        AssertNear(pixels, "first", values[0]);
        AssertNear(pixels, "last", values[^1]);
        double scale = finite.Sum(Math.Abs); // the order of a plain sum costs up to n·2⁻⁵³ of Σ|x|
        Assert.InRange(finite.Sum() - Number(pixels, "sum"), -1e-12 * scale, 1e-12 * scale);
    }

    private static void AssertNear(JsonElement pixels, string name, double actual)
    {
        double expected = Number(pixels, name);
        if (double.IsNaN(expected))
            Assert.True(double.IsNaN(actual), name);
        else
            Assert.InRange(actual, expected - (1e-12 * Math.Abs(expected)), expected + (1e-12 * Math.Abs(expected)));
    }

    private static string Text(JsonElement pixels, string name) => pixels.GetProperty(name).GetString()!;

    private static double Number(JsonElement pixels, string name) =>
        pixels.GetProperty(name).GetString() is { } text && text != "nan"
            ? double.Parse(text, CultureInfo.InvariantCulture)
            : double.NaN;
}
