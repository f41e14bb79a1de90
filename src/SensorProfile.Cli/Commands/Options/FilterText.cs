using System.Globalization;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>A filter as typed: <c>Ha=7@656</c> is its name, the width of its band and its centre in nm.</summary>
internal static class FilterText
{
    /// <exception cref="CommandFailure">The text does not describe a filter.</exception>
    public static FilterSetup Parse(string text)
    {
        int equals = text.LastIndexOf('=');
        string[] numbers = equals > 0 ? text[(equals + 1)..].Split('@') : [];
        double[] values =
        [
            .. numbers.Select(n =>
                double.TryParse(n, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                    ? value
                    : double.NaN
            ),
        ];
        return values.Length is 1 or 2 && values.All(v => v > 0 && double.IsFinite(v))
            ? new FilterSetup
            {
                Name = text[..equals].Trim(),
                BandwidthNanometres = values[0],
                CentreNanometres = values.Length == 2 ? values[1] : null,
            }
            : throw CommandFailure.WrongCommandLine(
                $"--filter takes a name, a width and a centre in nm, such as Ha=7@656, not '{text}'."
            );
    }

    public static string Of(FilterSetup filter) =>
        $"{filter.Name}={filter.BandwidthNanometres?.ToString(CultureInfo.InvariantCulture) ?? "300"}"
        + (filter.CentreNanometres is double centre ? $"@{centre.ToString(CultureInfo.InvariantCulture)}" : "");
}
