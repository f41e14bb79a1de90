using SensorProfile.Fitting.Statistics;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>The residual of fresh darks after subtracting a master, split by kind. All in ADU.</summary>
/// <param name="ExtraVariance">Variance over the ordinary pixels beyond the noise of the fresh mean, ADU².</param>
/// <param name="ExtraUncertainty">Standard uncertainty of that variance, ADU².</param>
/// <param name="HotBeyond">Number of pixels hot in the master with a residual beyond the limit, less those that noise
/// alone puts there.</param>
/// <param name="NewBeyond">Number of other such pixels.</param>
/// <param name="BeyondUncertainty">Standard uncertainty of the sum of both.</param>
/// <param name="VisibleLimit">The limit, ADU: the one asked for, or the smallest that the fresh darks can show.</param>
/// <param name="Glow">Largest smooth residual over blocks, ADU.</param>
/// <param name="GlowUncertainty">Its standard uncertainty.</param>
/// <param name="Structure">Standard deviation of the residual over rows or columns beyond chance, the larger of the
/// two, ADU.</param>
/// <param name="StructureUncertainty">Its standard uncertainty.</param>
/// <param name="Pixels">Pixels compared.</param>
internal sealed record MasterResidual(
    double ExtraVariance,
    double ExtraUncertainty,
    double HotBeyond,
    double NewBeyond,
    double BeyondUncertainty,
    double VisibleLimit,
    double Glow,
    double GlowUncertainty,
    double Structure,
    double StructureUncertainty,
    long Pixels
)
{
    private const int Block = 32;
    private const double SharedErrors = 5,
        SharedPart = 0.03; // of the noise of the fresh mean; flickering pixels alone do not reach it
    private const double OwnErrors = 3.5; // with a lower limit, noise alone fills the count

    /// <summary>
    /// Whether the difference has less noise than the fresh mean alone: a master of other frames can only add noise, so
    /// this one contains the fresh frames.
    /// </summary>
    public bool SharesNoise { get; private init; }

    /// <summary>Measures the residual, fresh − scale·master.</summary>
    /// <param name="fresh">Fresh darks.</param>
    /// <param name="residual">fresh − scale·master, with its offset still in it.</param>
    /// <param name="isHot">Whether a pixel is hot in the master.</param>
    /// <param name="biasVariance">Noise variance of the fresh bias that was also subtracted, ADU²; 0 when none
    /// was.</param>
    /// <param name="width">Width, px.</param>
    /// <param name="visible">Smallest residual that is visible in the stack, ADU.</param>
    /// <param name="ownNoise">Noise of a pixel relative to an ordinary one: a bright hot pixel has shot noise of its
    /// own, in the master and in the fresh darks, which is not a residual.</param>
    /// <param name="dithered">Visibility of pixels in a dithered stack; null for one without dithering.</param>
    public static MasterResidual Measure(
        FreshDarks fresh,
        float[] residual,
        Func<int, bool> isHot,
        double biasVariance,
        int width,
        double visible,
        Func<int, double> ownNoise,
        Func<double, DitheredPixels>? dithered = null
    )
    {
        double offset = RobustSpread.Median(residual),
            spread = RobustSpread.Measure(residual),
            noise = RobustSpread.Measure(fresh.HalfDifference);
        for (int i = 0; i < residual.Length; i++)
            residual[i] -= (float)offset;
        double error = Math.Sqrt(2 / (RobustSpread.Efficiency * residual.Length));
        double extra = spread * spread - noise * noise - biasVariance;
        DitheredPixels? places = dithered?.Invoke(extra);
        double ownErrors = OwnErrors * spread,
            limit = Math.Max(places?.VisiblePixel ?? visible, ownErrors);
        (double hot, double born, double beyondError) = places?.Beyond(
            residual,
            fresh.HalfDifference,
            isHot,
            i => ownErrors * ownNoise(i),
            noise > 0 ? spread / noise : 1,
            extra
        )
            ?? Beyond(
                residual,
                fresh.HalfDifference,
                isHot,
                i => Math.Max(visible, ownErrors * ownNoise(i)),
                noise > 0 ? noise / spread : 1
            );
        (double glow, double glowError) = Smooth(residual, width);
        (double lines, double linesError) = Lines(residual, fresh.HalfDifference, width);
        double extraError = error * double.Hypot(spread * spread, noise * noise);
        return new MasterResidual(
            extra,
            extraError,
            hot,
            born,
            beyondError,
            limit,
            glow,
            glowError,
            lines,
            linesError,
            residual.Length
        )
        {
            SharesNoise = -extra > Math.Max(SharedErrors * extraError, SharedPart * noise * noise),
        };
    }

    /// <summary>
    /// Number of pixels beyond their limit, less those beyond it in the noise map (with the limit shrunk to that map's
    /// smaller spread), so that flicker cancels.
    /// </summary>
    private static (double Hot, double New, double Uncertainty) Beyond(
        float[] residual,
        float[] noise,
        Func<int, bool> isHot,
        Func<int, double> limit,
        double shrunk
    )
    {
        long hot = 0,
            born = 0,
            hotByNoise = 0,
            bornByNoise = 0;
        for (int i = 0; i < residual.Length; i++)
        {
            double most = limit(i);
            bool beyond = Math.Abs(residual[i]) > most,
                byNoise = Math.Abs(noise[i]) > most * shrunk;
            if (!beyond && !byNoise)
                continue;
            (hot, hotByNoise, born, bornByNoise) = isHot(i)
                ? (hot + (beyond ? 1 : 0), hotByNoise + (byNoise ? 1 : 0), born, bornByNoise)
                : (hot, hotByNoise, born + (beyond ? 1 : 0), bornByNoise + (byNoise ? 1 : 0));
        }
        return (
            Math.Max(0, hot - hotByNoise),
            Math.Max(0, born - bornByNoise),
            Math.Sqrt(hot + born + hotByNoise + bornByNoise)
        );
    }

    /// <summary>
    /// Medians of blocks of 32 × 32 px: their largest distance from their own median, less the largest that chance
    /// gives for so many blocks.
    /// </summary>
    private static (double Value, double Uncertainty) Smooth(float[] residual, int width)
    {
        int height = residual.Length / width;
        List<double> medians = [],
            errors = [];
        for (int y = 0; y < height; y += Block)
        for (int x = 0; x < width; x += Block)
        {
            double[] block = Values(residual, width, x, y, Math.Min(Block, width - x), Math.Min(Block, height - y));
            if (block.Length < Block)
                continue;
            medians.Add(OrderStatistics.Median(block));
            errors.Add(OrderStatistics.MedianToMeanError * OrderStatistics.MadSigma(block) / Math.Sqrt(block.Length));
        }
        if (medians.Count < 2)
            return (0, 0);
        double centre = OrderStatistics.Median([.. medians]),
            u = OrderStatistics.Median([.. errors]);
        double chance = Probability.NormalQuantile(1 - 0.5 / medians.Count) * u;
        return (Math.Max(0, medians.Max(m => Math.Abs(m - centre)) - chance), u);
    }

    private static (double Value, double Uncertainty) Lines(float[] residual, float[] noise, int width)
    {
        (double rows, double rowsError) = Line(residual, noise, width, byRow: true);
        (double columns, double columnsError) = Line(residual, noise, width, byRow: false);
        return rows > columns ? (rows, rowsError) : (columns, columnsError);
    }

    /// <summary>
    /// Neighbouring lines are subtracted, so that smooth residuals do not count twice; the same figure of the noise map
    /// is taken off.
    /// </summary>
    private static (double Value, double Uncertainty) Line(float[] residual, float[] noise, int width, bool byRow)
    {
        double[] lines = Steps(residual, width, byRow),
            chance = Steps(noise, width, byRow);
        double variance = Square(OrderStatistics.MadSigma(lines)) - Square(OrderStatistics.MadSigma(chance));
        double error =
            Math.Sqrt(2 / (RobustSpread.Efficiency * Math.Max(1, lines.Length)))
            * double.Hypot(Square(OrderStatistics.MadSigma(lines)), Square(OrderStatistics.MadSigma(chance)));
        double value = Math.Sqrt(Math.Max(0, variance));
        return (value, value > 0 ? Math.Min(error / (2 * value), Math.Sqrt(error)) : Math.Sqrt(error));
    }

    private static double[] Steps(float[] map, int width, bool byRow)
    {
        int height = map.Length / width;
        double[] medians = byRow
            ? [.. Enumerable.Range(0, height).Select(y => OrderStatistics.Median(Values(map, width, 0, y, width, 1)))]
            : [.. Enumerable.Range(0, width).Select(x => OrderStatistics.Median(Values(map, width, x, 0, 1, height)))];
        return [.. medians.Skip(1).Select((m, i) => (m - medians[i]) / Math.Sqrt(2))];
    }

    private static double[] Values(float[] map, int width, int x, int y, int columns, int rows)
    {
        var values = new double[columns * rows];
        for (int r = 0; r < rows; r++)
        for (int c = 0; c < columns; c++)
            values[r * columns + c] = map[(y + r) * width + x + c];
        return values;
    }

    private static double Square(double x) => x * x;
}
