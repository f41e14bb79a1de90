using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Splits the rate of every pixel into glow and a thermal part.</summary>
/// <remarks>
/// Rate = thermal + glow at the reference temperature. Each part has its own temperature law, so only the parts can be
/// converted to another temperature. If glow is more than a twentieth of the rate of a pixel, the law measured on that
/// pixel is a mixture and valid for neither part.
/// </remarks>
/// <param name="Thermal">Rate without the glow, e-/px/s; not a number where it could not be measured.</param>
/// <param name="Classes">Classes of pixels by strength of the glow, faintest first.</param>
/// <param name="Laws">Doubling temperature against thermal rate, for pixels with hardly any glow.</param>
internal sealed record GlowSplit(float[] Thermal, IReadOnlyList<GlowClass> Classes, IReadOnlyList<DoublingByRate> Laws)
{
    private const double MixedShare = 0.05; // of the rate of a pixel
    private const int Steps = 16; // classes, spaced by a factor of √2
    private static readonly double ratio = Math.Sqrt(2);

    /// <summary>Splits the maps.</summary>
    /// <param name="maps">Rates, and the laws of the pixels.</param>
    /// <param name="found">The glow.</param>
    /// <param name="hotAbove">Thermal rate above which a pixel is hot, e-/px/s.</param>
    public static GlowSplit Split(RateMaps maps, GlowFinding found, double hotAbove)
    {
        GlowField field = found.Field;
        float[] thermal = new float[maps.Rate.Length];
        double peak = 0;
        for (int i = 0; i < thermal.Length; i++)
        {
            float glow = field.At(i);
            thermal[i] = maps.Rate[i] - glow;
            // outstanding pixels went by laws of their own
            if (!maps.Flags[i].HasFlag(PixelFlags.Outstanding))
                thermal[i] = (float)(thermal[i] / found.FloorFactor);
            peak = Math.Max(peak, glow);
        }
        double[] sums = new double[Steps + 1];
        long[] counts = new long[Steps + 1],
            hot = new long[Steps + 1];
        for (int i = 0; i < thermal.Length; i++)
        {
            if (float.IsNaN(thermal[i]))
                continue;
            double glow = field.At(i);
            int step = glow <= 0 ? 0 : Math.Max(0, Steps - (int)Math.Floor(Math.Log(peak / glow) / Math.Log(ratio)));
            counts[step]++;
            sums[step] += glow;
            hot[step] += thermal[i] > hotAbove ? 1 : 0;
        }
        double all = Math.Max(counts.Sum(), 1);
        GlowClass[] classes =
        [
            .. Enumerable
                .Range(0, Steps + 1)
                .Where(s => counts[s] > 0)
                .Select(s => new GlowClass(counts[s] / all, sums[s] / counts[s], hot[s] / (double)counts[s])),
        ];
        return new(
            thermal,
            classes,
            DoublingClasses.Sort(
                maps.Laws.Where(law => field.At(law.Pixel) <= MixedShare * law.Rate)
                    .Select(law => law with { Rate = law.Rate - field.At(law.Pixel) })
            )
        );
    }
}
