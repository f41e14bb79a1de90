using System.Globalization;

namespace SensorProfile.Setup;

/// <summary>Whether the numbers of a setup make sense.</summary>
internal static class SetupCheck
{
    /// <summary>The first field that makes no sense, and what it should be; null when there is none.</summary>
    public static (string Place, string Problem)? FirstProblem(ObservingSetup setup) =>
        Numbers(setup)
            .Where(n => n.Value is double value && !(double.IsFinite(value) && value > n.Above && value <= n.Most))
            .Select(n =>
                (
                    n.Place,
                    $"must be a number above {Text(n.Above)} and at most {Text(n.Most)}, not {Text(n.Value!.Value)}."
                )
            )
            .Concat(Words(setup))
            .Cast<(string, string)?>()
            .FirstOrDefault();

    private static IEnumerable<(string Place, double? Value, double Above, double Most)> Numbers(ObservingSetup setup)
    {
        yield return ("telescope.focalRatio", setup.Telescope?.FocalRatio, 0, 100);
        yield return ("telescope.efficiency", setup.Telescope?.Efficiency, 0, 1);
        yield return ("camera.pixelMicrometres", setup.Camera?.PixelMicrometres, 0, 1000);
        yield return ("sky.brightness", setup.Sky?.Brightness, 0, 30);
        yield return ("sky.rate", setup.Sky?.Rate, 0, 1e6);
        yield return ("stack.exposure", setup.Stack?.Exposure, 0, 1e5);
        yield return ("stack.lights", setup.Stack?.Lights, 0, 1e6);
        yield return ("stack.ditherPositions", setup.Stack?.DitherPositions, 0, 1e6);
        yield return ("stack.smooth", setup.Stack?.Smooth, 0, 10_000);
        yield return ("cooling.reach", setup.Cooling?.Reach, 0, 200);
        yield return ("acceptedLoss", setup.AcceptedLoss, 0, 100);
        foreach ((int i, FilterSetup filter) in (setup.Filters ?? []).Index())
        {
            yield return ($"filters[{i}].bandwidthNanometres", filter?.BandwidthNanometres, 0, 2000);
            yield return ($"filters[{i}].centreNanometres", filter?.CentreNanometres, 0, 5000);
        }
    }

    private static IEnumerable<(string Place, string Problem)> Words(ObservingSetup setup)
    {
        foreach ((string place, string? path) in Paths(setup))
            if (path is not null && (path.Length == 0 || path.Any(char.IsControl)))
                yield return (place, "expected the path of a file or folder.");
        if (
            setup.Sky is { } sky
            && new object?[] { sky.Brightness, sky.Rate, sky.Lights }.Count(s => s is not null) > 1
        )
            yield return ("sky", "give the sky in one way only: brightness, rate or lights.");
        if (setup.Stack is { Lights: int lights, DitherPositions: int positions } && positions > lights)
            yield return (
                "stack",
                $"{lights} lights cannot have {positions} dither positions: give at most one per light."
            );
        if (setup.Cooling is { Uncooled: true, Reach: not null })
            yield return ("cooling", "a camera without a cooler has no reach: leave out reach or uncooled.");
        foreach ((int i, FilterSetup filter) in (setup.Filters ?? []).Index())
            if (string.IsNullOrWhiteSpace(filter?.Name))
                yield return ($"filters[{i}]", "a filter needs a name.");
        string? twice = (setup.Filters ?? [])
            .GroupBy(f => f?.Name, StringComparer.OrdinalIgnoreCase)
            .FirstOrDefault(g => g.Count() > 1)
            ?.Key;
        if (twice is not null)
            yield return ("filters", $"two filters are called '{twice}'.");
    }

    private static IEnumerable<(string Place, string? Path)> Paths(ObservingSetup setup)
    {
        yield return ("camera.profile", setup.Camera?.Profile);
        yield return ("sky.lights", setup.Sky?.Lights);
        yield return ("cooling.nights", setup.Cooling?.Nights);
    }

    private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);
}
