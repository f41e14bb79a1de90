using SensorProfile.Decisions.Settling;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>Frames that would settle how far darks may differ from lights.</summary>
internal static class ToleranceSettling
{
    /// <summary>For a profile that does not say how dark current spreads over the pixels.</summary>
    internal static SettlingSearch OfDistribution(SensorReader reader, StackConditions stack)
    {
        SettlingFrames[] darks =
        [
            SettlingFrames.OfDistribution(reader, stack.ExposureSeconds, Math.Round(reader.Best.PixelReference)),
        ];
        return new SettlingSearch { Frames = darks, Outcome = SettlingOutcome.SpreadOverPixels };
    }

    /// <summary>For a tighter side that is known to no better than a share of itself.</summary>
    internal static SettlingSearch Search(
        CameraProfile profile,
        SensorReader reader,
        ToleranceQuestion question,
        SkyRate sky,
        StackConditions stack,
        MismatchLimits best,
        double relative
    )
    {
        SideLimits all = best.All;
        bool warm = (all.Warmer ?? double.PositiveInfinity) <= (all.Colder ?? double.PositiveInfinity);
        double tighter = all.Tighter!.Value;
        double?[] Side(SensorModel model, double s)
        {
            var mismatch = new DarkMismatch(model, stack, s, question.Limits);
            double? smallest = null;
            foreach (BindingCause cause in CauseLoads.Mismatches)
            {
                double? near = warm ? best.Of(cause).Warmer : best.Of(cause).Colder;
                // a cause four times as far off will not become the limit
                if (!(near <= 4 * tighter))
                    continue;
                var expected = new LimitCrossing.Expected(near);
                smallest = SideLimits.Smaller(
                    smallest,
                    warm
                        ? mismatch.Warmer(cause, question.Scaled, expected)
                        : mismatch.Colder(cause, question.Scaled, expected)
                );
            }
            return [smallest];
        }
        return SettlingSearch.Find(profile, reader, sky, left =>
            UncertaintyDraws.Through(reader, sky.Rate, Side, left)[0].StandardDeviation <= relative * tighter
        );
    }
}
