using SensorProfile.FixedPattern.Input;

namespace SensorProfile.FixedPattern.DarkRates;

/// <summary>Fits the common abscissa of the laws of hot pixels to a sample of them.</summary>
/// <remarks>
/// Hot pixels generate their dark current through energy levels of their own. The law of the typical pixel, which its
/// points often leave undecided, curves differently with temperature, and a law with the wrong curvature puts the rate
/// of every bright pixel off by a per cent or two. The sampled rows contain the slopes of the same pixels at every
/// temperature. Model: ln I_i(T) = b_i + a_i·(x + c₂·x² + c₃·x³), x the prior abscissa. Two steps alternate: b and a of
/// each pixel by weighted least squares, and both c from the residuals of all pixels together, orthogonal to the line
/// of each pixel. The weight of a pixel that misfits is divided by its reduced χ². Normal priors with mean 0 constrain
/// the bend where the pixels say little.
/// </remarks>
internal static class LawBendFit
{
    private const int MinPixels = 60,
        Rounds = 4;
    private const double MinSignal = 12, // standard uncertainties
        PriorSecond = 0.05, // twice the difference between a doubling and an Arrhenius law
        PriorThird = 0.01;

    /// <summary>Fits the bend; none with fewer than 60 hot pixels measured at three or more temperatures.</summary>
    /// <param name="input">The camera mode.</param>
    /// <param name="temperatures">Levels, with the slopes of the sampled pixels.</param>
    /// <param name="scale">Reference temperature and the one closest to it.</param>
    /// <param name="limit">Rate above the typical one from which a pixel stands out, e-/px/s.</param>
    public static LawBend Fit(
        PatternInput input,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures,
        ReferenceScale scale,
        double limit
    )
    {
        double[] x =
        [
            .. temperatures.Select(t =>
                PixelLaw.Abscissa(input.ActivationLaw, input.ReferenceTemperature, t.Series.TemperatureCelsius)
            ),
        ];
        List<Pixel> pixels = Hot(input, temperatures, scale, limit);
        LawBend bend = LawBend.None;
        if (pixels.Count < MinPixels)
            return bend;
        bool cubic = x.Distinct().Count() > 4;
        for (int round = 0; round < Rounds; round++)
        {
            double s22 = 1 / (PriorSecond * PriorSecond),
                s33 = 1 / (PriorThird * PriorThird),
                s23 = 0,
                r2 = -bend.Second * s22,
                r3 = -bend.Third * s33;
            foreach (Pixel pixel in pixels)
                pixel.AddTo(x, bend, ref s22, ref s23, ref s33, ref r2, ref r3);
            double determinant = s22 * s33 - s23 * s23;
            bend = cubic
                ? new(
                    bend.Second + (r2 * s33 - r3 * s23) / determinant,
                    bend.Third + (r3 * s22 - r2 * s23) / determinant
                )
                : new(bend.Second + r2 / s22, 0);
        }
        return bend;
    }

    /// <summary>
    /// ln rates of one hot pixel and their weights; weight 0 where the pixel does not stand out from the noise.
    /// </summary>
    private sealed class Pixel(double[] logs, double[] weights)
    {
        /// <summary>Adds the normal equations of the pixel for both coefficients.</summary>
        public void AddTo(
            double[] x,
            LawBend bend,
            ref double s22,
            ref double s23,
            ref double s33,
            ref double r2,
            ref double r3
        )
        {
            double w = 0,
                meanX = 0,
                meanY = 0,
                mean2 = 0,
                mean3 = 0;
            int n = 0;
            for (int t = 0; t < x.Length; t++)
            {
                if (weights[t] == 0)
                    continue;
                n++;
                w += weights[t];
                meanX += weights[t] * bend.At(x[t]);
                meanY += weights[t] * logs[t];
                mean2 += weights[t] * x[t] * x[t];
                mean3 += weights[t] * x[t] * x[t] * x[t];
            }
            (meanX, meanY, mean2, mean3) = (meanX / w, meanY / w, mean2 / w, mean3 / w);
            double xx = 0,
                xy = 0,
                x2 = 0,
                x3 = 0;
            for (int t = 0; t < x.Length; t++)
            {
                double dx = bend.At(x[t]) - meanX;
                xx += weights[t] * dx * dx;
                xy += weights[t] * dx * (logs[t] - meanY);
                x2 += weights[t] * dx * (x[t] * x[t] - mean2);
                x3 += weights[t] * dx * (x[t] * x[t] * x[t] - mean3);
            }
            double a = xy / xx,
                misfit = 0,
                p22 = 0,
                p23 = 0,
                p33 = 0,
                q2 = 0,
                q3 = 0;
            for (int t = 0; t < x.Length; t++)
            {
                double dx = bend.At(x[t]) - meanX,
                    residual = logs[t] - meanY - a * dx,
                    second = a * (x[t] * x[t] - mean2 - x2 / xx * dx),
                    third = a * (x[t] * x[t] * x[t] - mean3 - x3 / xx * dx);
                misfit += weights[t] * residual * residual;
                p22 += weights[t] * second * second;
                p23 += weights[t] * second * third;
                p33 += weights[t] * third * third;
                q2 += weights[t] * second * residual;
                q3 += weights[t] * third * residual;
            }
            double trust = 1 / Math.Max(1, misfit / (n - 2));
            (s22, s23, s33) = (s22 + trust * p22, s23 + trust * p23, s33 + trust * p33);
            (r2, r3) = (r2 + trust * q2, r3 + trust * q3);
        }
    }

    private static List<Pixel> Hot(
        PatternInput input,
        IReadOnlyList<(DarkSeries Series, SeriesLevels Levels)> temperatures,
        ReferenceScale scale,
        double limit
    )
    {
        var found = new List<Pixel>();
        int count = temperatures.Min(t => t.Levels.SampledSlopes.Length);
        double[] shot =
        [
            .. temperatures.Select(t =>
                t.Levels.Slope.Seconds.Select(
                        (s, g) =>
                            t.Levels.Slope.Factors[g] * t.Levels.Slope.Factors[g] * Math.Max(s, 0) / t.Levels.Frames[g]
                    )
                    .Sum()
            ),
        ];
        for (int i = 0; i < count; i++)
        {
            int channel = input.Mosaic.Channel(i / input.Width, i % input.Width);
            double Rate(int t) =>
                temperatures[t].Series.TypicalRate
                + temperatures[t].Levels.MedianShift
                + input.Gains[channel]
                    * (temperatures[t].Levels.SampledSlopes[i] - temperatures[t].Levels.Centres[channel]);
            if (!(Rate(scale.Nearest) * scale.Factors[scale.Nearest] - scale.Typical > limit))
                continue;
            double[] logs = new double[temperatures.Count],
                weights = new double[temperatures.Count];
            int shown = 0;
            for (int t = 0; t < logs.Length; t++)
            {
                double rate = Rate(t),
                    u = Math.Sqrt(
                        temperatures[t].Levels.Noise * temperatures[t].Levels.Noise
                            + Math.Max(rate - temperatures[t].Series.TypicalRate, 0) * shot[t]
                    );
                if (!(rate > MinSignal * u) || IsNearTop(input, temperatures[t].Levels, rate, channel))
                    continue;
                (logs[t], weights[t]) = (Math.Log(rate), rate * rate / (u * u));
                shown++;
            }
            if (shown > 2)
                found.Add(new(logs, weights));
        }
        return found;
    }

    /// <summary>Whether the longest exposure reaches the top code: the slope is then not a rate.</summary>
    private static bool IsNearTop(PatternInput input, SeriesLevels levels, double rate, int channel)
    {
        double longest = levels.Slope.Seconds.Max();
        return rate * longest / input.Gains[channel] > 0.8 * (input.TopCode - levels.Levels[0][channel]);
    }
}
