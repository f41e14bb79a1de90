using System.Runtime.InteropServices;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Shares of the places of a stack.</summary>
internal sealed partial class DarkResidual
{
    private const double Alike = 0.05; // of the limit of one pixel alone

    /// <summary>
    /// Share of the places whose residual, from the typical one, exceeds a limit in the stack; see
    /// <see cref="DitheredShare"/> for a dithered one.
    /// </summary>
    internal double ShareBeyond(double limit)
    {
        if (light.Clip is not null && lights.DitherPositions > 1)
            return ShareLeftBeyond(limit);
        double[] excesses = Kept();
        ReadOnlySpan<double> weights = sensor.Pixels!.Weights;
        for (int i = 0; i < excesses.Length; i++)
            excesses[i] -= typical;
        double share = 0;
        if (lights.DitherPositions > 1)
        {
            foreach (PixelGroup group in sensor.Pixels.Groups)
                share +=
                    group.Share
                    * DitheredShare.Beyond(
                        weights.Slice(group.First, group.Count),
                        excesses.AsSpan(group.First, group.Count),
                        sensor.Pixels.Hot.Slice(group.First, group.Count),
                        lights.DitherPositions,
                        limit
                    );
            return share;
        }
        for (int i = 0; i < excesses.Length; i++)
            if (Math.Abs(excesses[i]) > limit)
                share += weights[i];
        return share;
    }

    /// <summary>
    /// The same of a stack that rejects outliers: a hot pixel leaves another part of itself at every place.
    /// </summary>
    private double ShareLeftBeyond(double limit)
    {
        double[] kept = Kept();
        PixelPopulation pixels = sensor.Pixels!;
        Span<double> parts = stackalloc double[ClippedMean.Quantiles];
        List<double> weights = new(kept.Length * parts.Length),
            excesses = new(kept.Length * parts.Length);
        List<bool> hot = new(kept.Length * parts.Length);
        double share = 0;
        for (int g = 0; g < pixels.Groups.Count; g++)
        {
            PixelGroup group = pixels.Groups[g];
            (double centre, double unit) = UnitOf(g);
            weights.Clear();
            excesses.Clear();
            hot.Clear();
            for (int i = group.First; i < group.First + group.Count; i++)
            {
                if (!pixels.Hot[i])
                {
                    weights.Add(pixels.Weights[i]);
                    excesses.Add(kept[i] - typical);
                    hot.Add(false);
                    continue;
                }
                double excess = Of(i) - centre;
                light.Clip!.PartsLeft(excess / unit, light.Deviations[i] / unit, parts);
                // where a pixel leaves about as much at every place, its mean tells all
                if ((parts[^1] - parts[0]) * Math.Abs(excess) < Alike * limit * lights.DitherPositions)
                {
                    weights.Add(pixels.Weights[i]);
                    excesses.Add(kept[i] - typical);
                    hot.Add(true);
                    continue;
                }
                foreach (double part in parts)
                {
                    weights.Add(pixels.Weights[i] / parts.Length);
                    excesses.Add(centre + part * excess - typical);
                    hot.Add(true);
                }
            }
            share +=
                group.Share
                * DitheredShare.Beyond(
                    CollectionsMarshal.AsSpan(weights),
                    CollectionsMarshal.AsSpan(excesses),
                    CollectionsMarshal.AsSpan(hot),
                    lights.DitherPositions,
                    limit
                );
        }
        return share;
    }
}
