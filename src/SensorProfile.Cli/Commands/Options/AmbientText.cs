using SensorProfile.Decisions.Setpoint;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>An ambient temperature as typed: "−8" or "July=22".</summary>
internal static class AmbientText
{
    public static AmbientTemperature Parse(string text)
    {
        int sign = text.LastIndexOf('=');
        double celsius = Number.Parse(text[(sign + 1)..]);
        return new AmbientTemperature(sign > 0 ? text[..sign] : QuantityText.Temperature(celsius), celsius);
    }
}
