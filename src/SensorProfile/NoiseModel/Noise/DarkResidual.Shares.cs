using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Shares of the places of a stack.</summary>
internal sealed partial class DarkResidual
{
    /// <summary>
    /// Share of the places whose residual relative to the typical one exceeds a limit in the stack; see
    /// <see cref="DitheredShare"/> for a dithered stack.
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

    /// <summary>The same for a stack that rejects outliers.</summary>
    private double ShareLeftBeyond(double limit)
    {
        double[] dark = DarkElectrons(withHotPixels: true);
        ReadOnlySpan<double> held = light.Held,
            deviations = light.Deviations,
            weights = sensor.Pixels!.Weights;
        var rejected = new RejectedShare(light.Clip!, lights.DitherPositions, limit);
        double share = 0;
        for (int g = 0; g < sensor.Pixels.Groups.Count; g++)
        {
            PixelGroup group = sensor.Pixels.Groups[g];
            (double centre, double unit) = UnitOf(g);
            double spread = SpreadOf(group);
            var members = new RejectedShare.Member[group.Count];
            for (int i = 0; i < members.Length; i++)
            {
                int pixel = group.First + i;
                members[i] = new(weights[pixel], held[pixel] - Scale * dark[pixel] - centre, deviations[pixel]);
            }
            share += group.Share * rejected.Beyond(members, unit, spread, centre - typical, group.Share);
        }
        return share;
    }
}
