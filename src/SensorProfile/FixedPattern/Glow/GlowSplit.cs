using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.FixedPattern.Glow;

/// <summary>Parts every pixel's rate into what the glow adds and the thermal rest.</summary>
/// <remarks>
/// Rate = thermal + glow at the reference temperature: each part has a temperature law of its own, so that only the parts
/// can be carried to another temperature. Where the glow is more than a twentieth of a pixel's rate, the law measured on
/// that pixel is a mixture and speaks for neither part.
/// </remarks>
/// <param name="Thermal">Rate without the glow, e-/px/s; not a number where none could be measured.</param>
/// <param name="Classes">Pixels by the strength of the glow, faintest first.</param>
/// <param name="Laws">Doubling temperature against thermal rate, of pixels that hardly glow.</param>
internal sealed record GlowSplit(float[] Thermal, IReadOnlyList<GlowClass> Classes, IReadOnlyList<DoublingByRate> Laws)
{
    private const double MixedShare = 0.05; // of a pixel's rate
    private const int Steps = 16; // classes, each √2 of the next
    private static readonly double ratio = Math.Sqrt(2);

    /// <summary>Splits the maps.</summary>
    /// <param name="maps">Rates, and the laws of their pixels.</param>
    /// <param name="field">The glow.</param>
    /// <param name="hotAbove">Thermal rate above which a pixel is hot, e-/px/s.</param>
    public static GlowSplit Split(RateMaps maps, GlowField field, double hotAbove)
    {
        float[] thermal = new float[maps.Rate.Length];
        double peak = 0;
        for (int i = 0; i < thermal.Length; i++)
        {
            float glow = field.At(i);
            thermal[i] = maps.Rate[i] - glow;
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
