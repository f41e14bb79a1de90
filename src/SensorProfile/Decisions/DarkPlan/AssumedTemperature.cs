using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>The temperature assumed for lights when none was given.</summary>
/// <param name="Celsius">°C.</param>
/// <param name="IsSetpoint">Whether it is the set point that follows from the profile; otherwise it is the temperature
/// at which the profile knows its pixels best.</param>
public sealed record AssumedTemperature(double Celsius, bool IsSetpoint)
{
    /// <summary>
    /// The set point that profile and sky call for, within the measured range; for an uncooled camera, or where the
    /// profile cannot say, the profile's reference temperature.
    /// </summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="stack">The lights.</param>
    /// <param name="cooled">Whether the camera has a cooler.</param>
    /// <exception cref="DecisionRefusedException">The profile holds no dark current, or the question is
    /// wrong.</exception>
    public static AssumedTemperature Choose(
        CameraProfile profile,
        ModeProfile mode,
        StackDescription stack,
        bool cooled
    )
    {
        ArgumentNullException.ThrowIfNull(stack);
        return Of(SensorReader.Of(profile, mode), cooled ? Setpoint(profile, mode, stack) : null);
    }

    /// <summary>The same for a cooled camera whose set point is already known.</summary>
    /// <param name="profile">The camera.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="setpoint">The answer for the same exposure, sky and accepted loss.</param>
    internal static AssumedTemperature From(CameraProfile profile, ModeProfile mode, SetpointAnswer setpoint) =>
        Of(SensorReader.Of(profile, mode), Value(setpoint));

    private static AssumedTemperature Of(SensorReader reader, double? setpoint) =>
        setpoint is double wanted
            ? new(Math.Clamp(wanted, reader.Range.Low, reader.Range.High), true)
            : new(reader.Best.PixelReference, false);

    private static double? Value(SetpointAnswer answer) =>
        answer.Quantities.GetValueOrDefault(QuantityNames.Setpoint)?.Value;

    /// <summary>"the set point that follows from the profile, −6 °C".</summary>
    internal string Words =>
        $"{(IsSetpoint ? "the set point that follows from the profile" : "the profile's reference temperature")}, "
        + Plain.Celsius(Celsius);

    /// <summary>The finding that states the assumption.</summary>
    public Finding ToFinding() =>
        new(
            FindingCodes.TemperatureAssumed,
            Severity.Note,
            $"No temperature was given for the lights: {Words}, is assumed."
        );

    private static double? Setpoint(CameraProfile profile, ModeProfile mode, StackDescription stack)
    {
        try
        {
            var question = new SetpointQuestion
            {
                ExposureSeconds = stack.ExposureSeconds,
                Sky = NamedSkies.OrDefault(stack.Sky),
                Loss = stack.Limits.NoiseLoss,
            };
            return Value(SetpointAdvice.Find(profile, mode, question));
        }
        // no set point follows: the reference temperature is used instead, and the answer says so
        catch (DecisionRefusedException refused) when (refused.Kind == RefusalKind.CannotTell)
        {
            return null;
        }
    }
}
