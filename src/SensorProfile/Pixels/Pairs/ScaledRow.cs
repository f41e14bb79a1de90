using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Pixels.Pairs;

/// <summary>
/// Sums over the pixels kept by the clip in one row of one channel of a scaled pair; z² = d²/(a + ρ²b).
/// </summary>
/// <param name="Pixels">Pixels kept.</param>
/// <param name="A">Σa.</param>
/// <param name="B">Σb.</param>
/// <param name="Differences">Σd.</param>
/// <param name="Squares">Σd².</param>
/// <param name="Light">Σ(a + ρ²b).</param>
/// <param name="ReadWeight">Σ(1 + ρ²).</param>
/// <param name="SecondMoment">Σz².</param>
/// <param name="FourthMoment">Σz⁴.</param>
internal readonly record struct ScaledRow(
    long Pixels,
    double A,
    double B,
    double Differences,
    double Squares,
    double Light,
    double ReadWeight,
    double SecondMoment,
    double FourthMoment
)
{
    /// <summary>Histogram of z² for every channel.</summary>
    public static SquareHistogram[] Histograms(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        ChannelPedestals pedestal,
        double[][] ratios,
        WalkOptions? options
    )
    {
        var tallies = StripWalker.Tally(
            [a, b],
            () => Array.ConvertAll(ratios, _ => new SquareHistogram()),
            (strip, histograms) => ForEachRow(strip, mosaic, pedestal, (y, x, samplesA, samplesB, level) =>
                {
                    int channel = mosaic.Channel(y, x);
                    double ratio = ratios[channel][y / mosaic.Period];
                    for (; x < samplesA.Length; x += mosaic.Period)
                    {
                        var (difference, light) = Scaled(samplesA[x], samplesB[x], level[x], ratio);
                        if (light > 0)
                            histograms[channel].Add(difference * difference / light);
                    }
                }),
            options
        );
        return
        [
            .. Enumerable
                .Range(0, mosaic.Channels)
                .Select(channel => SquareHistogram.Merge(tallies.Select(tally => tally[channel]))),
        ];
    }

    /// <summary>Sums for every row of every channel, over pixels with z² up to the limit of the channel.</summary>
    public static ScaledRow[][] Measure(
        IFrameSamples a,
        IFrameSamples b,
        ColourMosaic mosaic,
        ChannelPedestals pedestal,
        double[][] ratios,
        double[] limits,
        WalkOptions? options
    )
    {
        var rows = LightRow.Empty<ScaledRow>(mosaic, a.Height);
        StripWalker.Walk(
            [a, b],
            strip =>
            {
                ForEachRow(strip, mosaic, pedestal, (y, x, samplesA, samplesB, level) =>
                {
                    int channel = mosaic.Channel(y, x),
                        row = y / mosaic.Period;
                    rows[channel][row] = Sum(
                        samplesA,
                        samplesB,
                        level,
                        x,
                        mosaic.Period,
                        ratios[channel][row],
                        limits[channel]
                    );
                });
                return true;
            },
            options
        );
        return rows;
    }

    private delegate void RowAction(
        int row,
        int firstColumn,
        ReadOnlySpan<ushort> a,
        ReadOnlySpan<ushort> b,
        ReadOnlySpan<float> level
    );

    private static void ForEachRow(Strip strip, ColourMosaic mosaic, ChannelPedestals pedestal, RowAction use)
    {
        var level = new float[strip.Width];
        for (int row = 0; row < strip.Rows; row++)
        {
            pedestal.CopyRow(strip.FirstRow + row, level);
            for (int x = 0; x < mosaic.Period; x++)
                use(strip.FirstRow + row, x, strip.Row(0, row), strip.Row(1, row), level);
        }
    }

    private static ScaledRow Sum(
        ReadOnlySpan<ushort> a,
        ReadOnlySpan<ushort> b,
        ReadOnlySpan<float> level,
        int first,
        int period,
        double ratio,
        double limit
    )
    {
        long pixels = 0;
        double sumA = 0,
            sumB = 0,
            differences = 0,
            squares = 0,
            lights = 0,
            second = 0,
            fourth = 0;
        for (int x = first; x < a.Length; x += period)
        {
            var (difference, light) = Scaled(a[x], b[x], level[x], ratio);
            double square = difference * difference / light;
            if (!(light > 0 && square <= limit))
                continue;
            pixels++;
            sumA += a[x] - (double)level[x];
            sumB += b[x] - (double)level[x];
            differences += difference;
            squares += difference * difference;
            lights += light;
            second += square;
            fourth += square * square;
        }
        return new ScaledRow(
            pixels,
            sumA,
            sumB,
            differences,
            squares,
            lights,
            pixels * (1 + ratio * ratio),
            second,
            fourth
        );
    }

    private static (double Difference, double Light) Scaled(ushort a, ushort b, float level, double ratio)
    {
        double lightA = a - (double)level,
            lightB = b - (double)level;
        return (lightA - ratio * lightB, lightA + ratio * ratio * lightB);
    }
}
