using System.Text.Json.Nodes;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Desk.Framing;

/// <summary>One set of frames as the survey's document lists it.</summary>
/// <param name="Kind">bias, dark, flat …</param>
/// <param name="Exposure">s; null when it is not known.</param>
/// <param name="Temperature">°C; null when it is not known.</param>
/// <param name="Frames">How many.</param>
/// <param name="Settings">Gain, offset and so on, in words.</param>
/// <param name="Files">Their names.</param>
internal sealed record FrameSetRow(
    string Kind,
    double? Exposure,
    double? Temperature,
    int Frames,
    string Settings,
    IReadOnlyList<string> Files
)
{
    /// <summary>The sets of a survey.</summary>
    public static IReadOnlyList<FrameSetRow> In(AnswerDocument survey)
    {
        JsonArray? sets = survey.Fields.FirstOrDefault(f => f.Key == "sets").Value as JsonArray;
        IReadOnlyList<IReadOnlyList<string>> rows = survey.Tables.Count > 0 ? survey.Tables[0].Rows : [];
        return
        [
            .. (sets ?? []).Select(
                (set, i) =>
                    new FrameSetRow(
                        set?["kind"]?.GetValue<string>() ?? "unknown",
                        set?["exposure"]?.GetValue<double>(),
                        set?["temperature"]?.GetValue<double>(),
                        set?["frames"]?.GetValue<int>() ?? 0,
                        i < rows.Count ? rows[i][^1] : "",
                        [.. (set?["files"] as JsonArray ?? []).Select(f => f!.GetValue<string>())]
                    )
            ),
        ];
    }

    /// <summary>Exposure in words.</summary>
    public string ExposureText => Exposure is double s ? $"{QuantityText.Number(s)} s" : "exposure unknown";

    /// <summary>Temperature in words.</summary>
    public string TemperatureText => Temperature is double c ? QuantityText.Temperature(c) : "temperature unknown";

    /// <summary>The same to whole degrees, for the heading of a column.</summary>
    public string ColumnText =>
        Temperature is double c
            ? QuantityText.Degrees(Math.Round(c, MidpointRounding.AwayFromZero) + 0.0)
            : "temperature unknown";
}
