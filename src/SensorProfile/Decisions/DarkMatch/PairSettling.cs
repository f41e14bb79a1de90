using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The frames that would settle an open verdict on a light set and a dark set.</summary>
internal static class PairSettling
{
    private const double Apart = 10; // between the temperatures of a first characterisation, °C

    /// <summary>
    /// No profile of this mode, or one without the distribution over pixels: the frames of a first characterisation.
    /// </summary>
    internal static LightMatch NoProfile(LightMatch plain, SensorReader? reader, SetSummary lights, SetSummary darks)
    {
        double longest = Math.Max(lights.Exposure!.Value, darks.Exposure!.Value);
        if (reader is not null)
        {
            SettlingFrames[] more =
            [
                SettlingFrames.OfDistribution(reader, longest, Math.Round(lights.Temperature!.Value)),
            ];
            return plain with { Settling = more, Reason = new MatchReason(MatchGround.NoSpread) };
        }
        double middle = Math.Round((lights.Temperature!.Value + darks.Temperature!.Value) / 2);
        double[] temperatures = [middle - Apart, middle, middle + Apart];
        SettlingFrames[] session =
        [
            SettlingFrames.Of(FrameKind.Bias, null, null, MissingMeasurements.BiasForPixelNoise),
            SettlingFrames.Of(FrameKind.Flat, null, null, 2 * MissingMeasurements.FlatLevels),
            .. from celsius in temperatures
            from seconds in new[] { longest / 10, longest / 3, longest }
            select SettlingFrames.Of(
                FrameKind.Dark,
                Math.Round(seconds, seconds < 10 ? 1 : 0),
                celsius,
                SettlingFrames.EachDark
            ),
        ];
        return plain with { Settling = session, Reason = new MatchReason(MatchGround.NoProfile) };
    }

    /// <summary>Lights or darks outside the range in which the profile was measured.</summary>
    internal static LightMatch OutOfReach(
        LightMatch plain,
        SensorReader reader,
        Finding refusal,
        SetSummary lights,
        SetSummary darks
    )
    {
        (double low, double high) = reader.Range;
        double farthest =
            reader.Outside(lights.Temperature!.Value) > reader.Outside(darks.Temperature!.Value)
                ? lights.Temperature.Value
                : darks.Temperature!.Value;
        IReadOnlyList<SettlingFrames> frames =
            reader.Outside(farthest) > Refuse.ExtrapolationCelsius
                ? SettlingFrames.NewTemperature(Math.Max(lights.Exposure!.Value, darks.Exposure!.Value), farthest)
                :
                [
                    SettlingFrames.Of(
                        FrameKind.Dark,
                        lights.Exposure!.Value,
                        Math.Round(Math.Clamp(lights.Temperature.Value, low, high)),
                        SettlingFrames.EachDark
                    ),
                ];
        return plain with
        {
            Settling = frames,
            Reason = new MatchReason(MatchGround.OutOfReach) { Refusal = refusal },
        };
    }
}
