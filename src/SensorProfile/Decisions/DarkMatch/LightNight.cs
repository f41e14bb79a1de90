using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>The temperatures of a light set through the night, against those that its darks serve.</summary>
/// <param name="DarkCelsius">Temperature of the darks, °C; null when unknown.</param>
/// <param name="Warmer">How much warmer than a light the darks may be, °C; null when nothing limits it or it is not
/// known.</param>
/// <param name="Colder">How much colder than a light the darks may be, °C; null when nothing limits it or it is not
/// known.</param>
/// <param name="Known">Whether the tolerance is known: the profile reaches these lights, and the darks have their
/// exposure.</param>
/// <param name="Lights">The lights, in order of time.</param>
internal sealed record LightNight(
    double? DarkCelsius,
    double? Warmer,
    double? Colder,
    bool Known,
    IReadOnlyList<LightTemperature> Lights
)
{
    /// <summary>Number of lights that these darks do not serve, judged one by one.</summary>
    public int Beyond => Lights.Count(l => l.Within == false);

    /// <summary>Coldest light that the darks serve, °C; null when there is no such limit.</summary>
    public double? ServesFrom => DarkCelsius - Warmer;

    /// <summary>Warmest light that the darks serve, °C; null when there is no such limit.</summary>
    public double? ServesTo => DarkCelsius + Colder;

    internal static LightNight Describe(
        SensorReader? reader,
        MatchQuestion question,
        SkyRate sky,
        SetSummary lights,
        SetSummary darks,
        int stackLights
    )
    {
        double? warmer = null,
            colder = null;
        bool known =
            reader is not null
            && lights.Temperature is not null
            && darks.Temperature is not null
            && DarkMatching.SameExposure(lights.Exposure, darks.Exposure)
            && PairJudge.Beyond(reader, lights, darks) is null;
        if (known)
        {
            var mismatch = new DarkMismatch(
                reader!.Best,
                PairJudge.Stack(question, sky, lights, stackLights),
                sky.Rate.Value,
                question.Stack.Limits
            );
            foreach (BindingCause cause in CauseLoads.Mismatches)
            {
                warmer = SideLimits.Smaller(warmer, mismatch.Warmer(cause, scaled: false));
                colder = SideLimits.Smaller(colder, mismatch.Colder(cause, scaled: false));
            }
        }
        bool? Within(double? celsius) =>
            known && celsius is double t
                ? !(darks.Temperature - t > warmer) && !(t - darks.Temperature > colder)
                : null;
        return new LightNight(
            darks.Temperature,
            warmer,
            colder,
            known,
            [
                .. lights.Set.Frames.Select(f => new LightTemperature(
                    f.Name,
                    f.StartUtc,
                    f.TemperatureCelsius,
                    Within(lights.SetPoint ?? f.TemperatureCelsius)
                )),
            ]
        );
    }
}
