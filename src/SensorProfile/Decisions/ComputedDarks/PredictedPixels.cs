using SensorProfile.FixedPattern.Defects;
using SensorProfile.Pixels;
using SensorProfile.Prediction;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>Computes a master dark from the maps, a few rows at a time.</summary>
internal sealed class PredictedPixels
{
    private const int RowsAtOnce = 64;
    private const int Sampled = 200_000;

    private readonly List<float> ordinary = [],
        hot = [];

    private readonly Dictionary<PredictionClass, long> refused = [];

    private PredictedPixels(int pixels) => (Values, Uncertainty) = (new float[pixels], new float[pixels]);

    /// <summary>ADU, pedestal included.</summary>
    public float[] Values { get; }

    /// <summary>Standard uncertainty, ADU; not a number where nothing is claimed.</summary>
    public float[] Uncertainty { get; }

    /// <summary>
    /// Pixels without a measured rate: they show the pedestal and the typical dark signal, or the top code.
    /// </summary>
    public long Unmeasured { get; private set; }

    /// <summary>Pixels that are full.</summary>
    public long Full { get; private set; }

    /// <summary>Classes for which nothing is claimed, with their number of pixels; the largest first.</summary>
    public IReadOnlyList<(PredictionClass Class, long Pixels)> Refused =>
        [
            .. refused
                .OrderByDescending(r => r.Value)
                .ThenBy(r => r.Key.Pixels, StringComparer.Ordinal)
                .ThenBy(r => r.Key.FromNoise)
                .Select(r => (r.Key, r.Value)),
        ];

    /// <summary>Standard uncertainties of a sample of ordinary and of hot pixels, e-.</summary>
    public (IReadOnlyList<float> Ordinary, IReadOnlyList<float> Hot) Doubts => (ordinary, hot);

    /// <summary>Computes the master.</summary>
    public static PredictedPixels Compute(
        PredictionMaps maps,
        ForecastLaws laws,
        ColourMosaic mosaic,
        double[] gains,
        double celsius,
        double seconds,
        double top,
        double commonDoubt,
        bool pinned,
        ClassClaims claims,
        CancellationToken cancellation
    )
    {
        var result = new PredictedPixels(maps.Width * maps.Height);
        var forecast = new DarkForecast(laws, celsius, seconds);
        string[] names =
        [
            "pedestal",
            "pedestal-uncertainty",
            "dark-rate",
            "dark-rate-uncertainty",
            "doubling",
            "doubling-uncertainty",
            "glow",
            "defects",
        ];
        float[][] rows = [.. names.Select(_ => new float[RowsAtOnce * maps.Width])];
        int stride = Math.Max(1, maps.Width * maps.Height / Sampled) | 1;
        for (int first = 0; first < maps.Height; first += RowsAtOnce)
        {
            cancellation.ThrowIfCancellationRequested();
            int count = Math.Min(RowsAtOnce, maps.Height - first) * maps.Width;
            for (int m = 0; m < names.Length; m++)
                maps.Read(names[m], first, rows[m].AsSpan(0, count));
            for (int i = 0; i < count; i++)
            {
                int at = first * maps.Width + i;
                double gain = gains[mosaic.Channel(at / maps.Width, at % maps.Width)];
                var defect = float.IsNaN(rows[7][i]) ? DefectClass.None : (DefectClass)(byte)rows[7][i];
                bool outstanding = float.IsFinite(rows[5][i]) || (defect & (DefectClass.Hot | DefectClass.Warm)) != 0;
                var pixel = new PixelState(
                    rows[2][i],
                    rows[3][i],
                    outstanding,
                    rows[4][i],
                    rows[5][i],
                    float.IsNaN(rows[6][i]) ? 0 : rows[6][i]
                );
                (double electrons, double variance) = forecast.Predict(pixel, Math.Pow(rows[1][i] * gain, 2));
                (variance, PredictionClass? without) = claims.Claim(
                    pixel,
                    defect.HasFlag(DefectClass.Flickering),
                    variance,
                    electrons - forecast.Typical
                );
                if (without is not null)
                    result.refused[without] = result.refused.GetValueOrDefault(without) + 1;
                if (pinned)
                    electrons -= forecast.Typical;
                result.Set(
                    at,
                    rows[0][i],
                    electrons,
                    Math.Sqrt(variance + commonDoubt * commonDoubt),
                    gain,
                    defect,
                    forecast.Typical,
                    top
                );
                if (outstanding ? result.hot.Count < Sampled : at % stride == 0)
                    (outstanding ? result.hot : result.ordinary).Add((float)(result.Uncertainty[at] * gain));
            }
        }
        return result;
    }

    private void Set(
        int at,
        double pedestal,
        double electrons,
        double doubt,
        double gain,
        DefectClass defect,
        double typical,
        double top
    )
    {
        double value = pedestal + electrons / gain;
        if (!double.IsFinite(value))
        {
            Unmeasured++;
            (value, doubt) = (
                defect.HasFlag(DefectClass.Saturated) ? top
                : double.IsFinite(pedestal) ? pedestal + typical / gain
                : double.NaN,
                double.NaN
            );
        }
        if (value > top)
        {
            Full++;
            value = top;
        }
        (Values[at], Uncertainty[at]) = ((float)value, (float)(doubt / gain));
    }
}
