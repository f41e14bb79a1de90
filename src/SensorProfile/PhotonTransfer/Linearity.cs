using SensorProfile.Fitting.Models;

namespace SensorProfile.PhotonTransfer;

/// <summary>How linearly the mean signal grows with exposure.</summary>
/// <param name="Error">Mean absolute relative deviation from the line, %.</param>
/// <param name="Deviations">Deviation of each given point, %; null for points outside the range.</param>
internal sealed record LinearityResult(Measurement Error, IReadOnlyList<double?> Deviations);

/// <summary>Linearity error after EMVA Standard 1288, Release 4.0 Linear.</summary>
/// <remarks>Straight line y = a + b·x of signal against exposure (constant light) with weights 1/y², over 5 % … 95 % of
/// saturation; the error is mean |y − ŷ|/ŷ in %. Its uncertainty combines the scatter of the deviations with the noise
/// of the means.</remarks>
internal static class Linearity
{
    /// <summary>Fewer levels than this say nothing about a curve.</summary>
    public const int MinLevels = 4;

    /// <param name="exposures">Exposures, s.</param>
    /// <param name="signals">Mean signals above the pedestal, ADU.</param>
    /// <param name="uncertainties">Their standard uncertainties, ADU.</param>
    /// <param name="saturationAdu">Saturation above the pedestal, ADU.</param>
    /// <returns>
    /// Null with fewer than <see cref="MinLevels"/> different exposures in the range, or when the fitted line is not
    /// positive at every point.
    /// </returns>
    public static LinearityResult? Fit(
        ReadOnlySpan<double> exposures,
        ReadOnlySpan<double> signals,
        ReadOnlySpan<double> uncertainties,
        double saturationAdu
    )
    {
        var used = new List<int>();
        for (int i = 0; i < signals.Length; i++)
            if (signals[i] > 0 && signals[i] >= 0.05 * saturationAdu && signals[i] <= 0.95 * saturationAdu)
                used.Add(i);
        double[] x = new double[used.Count],
            y = new double[used.Count];
        for (int k = 0; k < used.Count; k++)
        {
            x[k] = exposures[used[k]];
            y[k] = signals[used[k]];
        }
        if (x.Distinct().Count() < MinLevels)
            return null;

        StraightLine line = StraightLine.Fit(x, y, y);
        double?[] deviations = new double?[signals.Length];
        double sum = 0,
            sumOfSquares = 0,
            noise = 0;
        for (int k = 0; k < used.Count; k++)
        {
            double fitted = line.Intercept + line.Slope * x[k],
                deviation = 100 * (y[k] - fitted) / fitted;
            if (!(fitted > 0))
                return null;
            deviations[used[k]] = deviation;
            sum += Math.Abs(deviation);
            sumOfSquares += deviation * deviation;
            noise += Math.Pow(100 * uncertainties[used[k]] / fitted, 2);
        }
        int n = used.Count;
        double mean = sum / n,
            scatter = Math.Max(0, sumOfSquares / n - mean * mean) / n;
        double uncertainty = Math.Sqrt(scatter + noise / n);
        if (!double.IsFinite(mean) || !double.IsFinite(uncertainty))
            return null;
        return new(
            new Measurement(
                mean,
                uncertainty,
                "%",
                n,
                "mean absolute deviation from a straight line, 5-95 % of saturation (EMVA 1288)"
            ),
            deviations
        );
    }
}
