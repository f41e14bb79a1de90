using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>What a mode means for usual nights: lights of 300 s, 40 to a stack, under three named skies.</summary>
/// <param name="Setpoints">How cold, for each sky; empty when the profile cannot say.</param>
/// <param name="Still">How far off the darks may be without dithering, for each sky.</param>
/// <param name="Dithered">The same with <see cref="Positions"/> dither positions and outliers rejected.</param>
/// <param name="Counts">How many darks without dithering, for each sky.</param>
/// <param name="DitheredCounts">How many darks with dithering, for each sky.</param>
/// <param name="Exposures">How long a light must be, for each sky.</param>
/// <param name="Refusals">Why some of it could not be answered.</param>
internal sealed record NightAnswers(
    IReadOnlyList<SetpointAnswer> Setpoints,
    IReadOnlyList<ToleranceAnswer> Still,
    IReadOnlyList<ToleranceAnswer> Dithered,
    IReadOnlyList<DarkCountAnswer> Counts,
    IReadOnlyList<DarkCountAnswer> DitheredCounts,
    IReadOnlyList<GainChoiceAnswer> Exposures,
    IReadOnlyList<Finding> Refusals
)
{
    /// <summary>Exposure of one light, s.</summary>
    public const double ExposureSeconds = 300;

    /// <summary>Lights in a stack.</summary>
    public const int Lights = 40;

    /// <summary>Dither positions among them.</summary>
    public const int Positions = 20;

    /// <summary>Index of the sky under which the darks must be nearest: the darkest of the three.</summary>
    public int Strictest => Enumerable.Range(0, Still.Count).MinBy(i => Still[i].Sky.Rate.Value);

    /// <summary>Asks every question of a mode; what the profile cannot answer is left out and said.</summary>
    public static NightAnswers Of(CameraProfile profile, ModeProfile mode)
    {
        var refusals = new List<Finding>();
        IReadOnlyList<T> Each<T>(Func<SkyRate, T> ask)
        {
            try
            {
                return [.. NamedSkies.All.Select(ask)];
            }
            catch (DecisionRefusedException refusal)
            {
                refusals.Add(refusal.ToFinding() with { Severity = Severity.Note });
                return [];
            }
        }
        double celsius = mode.FixedPattern?.ReferenceTemperature ?? mode.DarkCurrent?.ReferenceTemperature ?? 0;
        ToleranceQuestion Stack(SkyRate sky, int positions) =>
            new()
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                TemperatureCelsius = celsius,
                Sky = sky,
                DitherPositions = positions,
                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
            };
        DarkCountQuestion Darks(SkyRate sky, int positions) =>
            new()
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                TemperatureCelsius = celsius,
                Sky = sky,
                DitherPositions = positions,
                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
            };
        var answers = new NightAnswers(
            Each(sky =>
                SetpointAdvice.Advise(
                    profile,
                    mode,
                    new SetpointQuestion { ExposureSeconds = ExposureSeconds, Sky = sky }
                )
            ),
            Each(sky => DarkTolerance.Find(profile, mode, Stack(sky, 1))),
            Each(sky => DarkTolerance.Find(profile, mode, Stack(sky, Positions))),
            Each(sky => DarkCountAdvice.Find(profile, mode, Darks(sky, 1))),
            Each(sky => DarkCountAdvice.Find(profile, mode, Darks(sky, Positions))),
            Each(sky => ExposureAdvice.Find(profile with { Modes = [mode] }, new ExposureQuestion { Sky = sky })),
            []
        );
        return answers with { Refusals = [.. refusals.DistinctBy(finding => finding.Message)] };
    }
}
