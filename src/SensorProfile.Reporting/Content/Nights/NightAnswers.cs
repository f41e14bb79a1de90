using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>
/// What a mode means for usual nights: lights of 300 s, 40 to a stack, under the default sky, at the profile's set
/// point. These are the defaults of the commands, so the answers agree with theirs.
/// </summary>
/// <param name="Setpoints">How cold; empty when the profile cannot say.</param>
/// <param name="Still">How far off the darks may be without dithering; empty likewise.</param>
/// <param name="Dithered">The same with <see cref="Positions"/> dither positions and outliers rejected.</param>
/// <param name="Counts">How many darks without dithering.</param>
/// <param name="DitheredCounts">How many darks with dithering.</param>
/// <param name="Exposures">How long to expose.</param>
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

    /// <summary>The sky of all answers.</summary>
    public static SkyRate Sky => NamedSkies.Default;

    /// <summary>How many flats without dithering; empty when the profile cannot say.</summary>
    public IReadOnlyList<FlatPlanAnswer> Flats { get; init; } = [];

    /// <summary>The same with dithering.</summary>
    public IReadOnlyList<FlatPlanAnswer> DitheredFlats { get; init; } = [];

    /// <summary>Scale over which residuals are judged as smooth, px; null judges them against the noise of one pixel.</summary>
    public double? SmoothPixels { get; init; }

    /// <summary>Temperature of the lights; null when the profile cannot say.</summary>
    public AssumedTemperature? Temperature { get; init; }

    /// <summary>Asks every question about a mode; what the profile cannot answer is left out and its refusal kept.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="smoothPixels">Scale over which residuals of glow and level are smooth, px; null for the noise of one
    /// pixel.</param>
    public static NightAnswers Ask(CameraProfile profile, ModeProfile mode, double? smoothPixels = null)
    {
        var limits = new LossLimits { SmoothPixels = smoothPixels };
        var refusals = new List<Finding>();
        T? Asked<T>(Func<T> ask)
            where T : class
        {
            try
            {
                return ask();
            }
            catch (DecisionRefusedException refusal)
            {
                refusals.Add(refusal.ToFinding() with { Severity = Severity.Note });
                return null;
            }
        }
        IReadOnlyList<T> One<T>(Func<T> ask)
            where T : class => Asked(ask) is { } answer ? [answer] : [];
        var stack = new StackDescription
        {
            ExposureSeconds = ExposureSeconds,
            Lights = Lights,
            Sky = Sky,
            Limits = limits,
        };
        IReadOnlyList<SetpointAnswer> setpoints = One(() =>
            SetpointAdvice.Find(
                profile,
                mode,
                new SetpointQuestion
                {
                    ExposureSeconds = ExposureSeconds,
                    Sky = Sky,
                    Loss = stack.Limits.NoiseLoss,
                }
            )
        );
        AssumedTemperature? taken = Asked(() =>
            setpoints is [var setpoint]
                ? AssumedTemperature.From(profile, mode, setpoint)
                : AssumedTemperature.Choose(profile, mode, stack, cooled: true)
        );
        double celsius = taken?.Celsius ?? mode.DarkCurrent?.ReferenceTemperature ?? 0;
        ToleranceQuestion Stack(int positions) =>
            new()
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                TemperatureCelsius = celsius,
                Sky = Sky,
                DitherPositions = positions,
                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
                Limits = limits,
            };
        DarkCountQuestion Darks(int positions) =>
            new()
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                TemperatureCelsius = celsius,
                Sky = Sky,
                DitherPositions = positions,
                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
                Limits = limits,
            };
        FlatPlanQuestion FlatsAt(int positions) =>
            new()
            {
                ExposureSeconds = ExposureSeconds,
                Lights = Lights,
                TemperatureCelsius = celsius,
                Sky = Sky,
                DitherPositions = positions,
                Rejection = positions > 1 ? Rejection.SigmaClip : Rejection.None,
                Limits = limits,
            };
        var answers = new NightAnswers(
            setpoints,
            One(() => DarkTolerance.Find(profile, mode, Stack(1))),
            One(() => DarkTolerance.Find(profile, mode, Stack(Positions))),
            One(() => DarkCountAdvice.Find(profile, mode, Darks(1))),
            One(() => DarkCountAdvice.Find(profile, mode, Darks(Positions))),
            One(() => ExposureAdvice.Find(profile with { Modes = [mode] }, new ExposureQuestion { Sky = Sky })),
            []
        )
        {
            Temperature = taken,
            Flats = One(() => FlatPlanAdvice.Find(profile, mode, FlatsAt(1))),
            DitheredFlats = One(() => FlatPlanAdvice.Find(profile, mode, FlatsAt(Positions))),
            SmoothPixels = smoothPixels,
        };
        return answers with { Refusals = [.. refusals.DistinctBy(finding => finding.Message)] };
    }
}
