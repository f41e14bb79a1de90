using SensorProfile.Cli.Commands.Options;
using SensorProfile.Reporting.Answers;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Printing;

/// <summary>The answer of <c>setup</c>: where it is stored, what it holds, what to ask next.</summary>
internal static class SetupDocument
{
    private const string New = "written",
        Kept = "kept",
        None = "none";

    public static AnswerShape Shape { get; } = new("setup", [New, Kept, None], typeof(SetupFields));

    public static AnswerDocument Written(string file, ObservingSetup setup) =>
        Compose($"Your setup is saved: from now on, give only what differs from it.", New, file, setup);

    public static AnswerDocument Shown(string file, ObservingSetup? setup) =>
        setup is null
            ? Compose(
                "There is no setup yet: say what is usual for you, for example: sensorprofile setup --exposure 300 --lights 40",
                None,
                file,
                new ObservingSetup()
            )
            : Compose("This is your setup; an option changes it.", Kept, file, setup);

    private static AnswerDocument Compose(string sentence, string verdict, string file, ObservingSetup setup)
    {
        string[][] rows = [.. Rows(setup).Where(r => r.Value is not null).Select(r => new[] { r.Name, r.Value! })];
        bool ready = setup.Camera?.Profile is not null && setup.Stack?.Exposure is not null;
        return new AnswerDocument
        {
            Command = "setup",
            Sentence = sentence,
            Verdict = verdict,
            Tables = rows.Length == 0 ? [] : [AnswerTable.List("", rows.Select(r => $"{r[0]}: {r[1]}"))],
            Lines =
            [
                verdict == None ? $"It will be written to {file}" : $"Setup: {file}",
                .. ready ? new[] { "Try next: sensorprofile setpoint" } : [],
            ],
            Fields = new SetupFields(file, setup),
        };
    }

    private static IEnumerable<(string Name, string? Value)> Rows(ObservingSetup setup)
    {
        yield return ("camera", setup.Camera?.Profile);
        yield return ("pixels", With(setup.Camera?.PixelMicrometres, "µm"));
        yield return ("telescope", setup.Telescope?.FocalRatio is double n ? $"f/{QuantityText.Number(n)}" : null);
        yield return ("efficiency", With(setup.Telescope?.Efficiency, ""));
        yield return ("sky", Sky(setup.Sky));
        yield return (
            "filters",
            setup.Filters is { Count: > 0 } filters ? string.Join(", ", filters.Select(FilterText.Of)) : null
        );
        yield return ("exposure", With(setup.Stack?.Exposure, "s"));
        yield return ("lights", With(setup.Stack?.Lights, ""));
        yield return ("dither positions", With(setup.Stack?.DitherPositions, ""));
        yield return ("rejection", setup.Stack?.Rejection is { } rejection ? EnumWord.Of(rejection) : null);
        yield return ("smooth residuals over", With(setup.Stack?.Smooth, "px"));
        yield return ("cooler reaches", With(setup.Cooling?.Reach, "°C below the air"));
        yield return ("cooler", setup.Cooling?.Uncooled == true ? "none" : null);
        yield return ("nights", setup.Cooling?.Nights);
        yield return ("accepted loss", With(setup.AcceptedLoss, "%"));
    }

    private static string? Sky(SkySetup? sky) =>
        With(sky?.Brightness, "mag/arcsec²")
        ?? With(sky?.Rate, "e⁻/px/s")
        ?? (sky?.Lights is { } l ? $"measured on {l}" : null);

    private static string? With(double? value, string unit) =>
        value is double number ? $"{QuantityText.Number(number)} {unit}".TrimEnd() : null;
}

/// <summary>Fields that only <c>setup</c> adds to the JSON document.</summary>
internal sealed record SetupFields(string File, ObservingSetup Setup);
