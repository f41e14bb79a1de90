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
        IReadOnlyList<IReadOnlyList<string>> rows = survey.Tables.Count > 0 ? survey.Tables[0].Rows : [];
        return survey.Fields is SurveyFields fields
            ?
            [
                .. fields.Sets.Select(
                    (set, i) =>
                        new FrameSetRow(
                            set.Kind,
                            set.Exposure,
                            set.Temperature,
                            set.Frames,
                            i < rows.Count ? rows[i][^1] : "",
                            set.Files
                        )
                ),
            ]
            : [];
    }

    /// <summary>Exposure in words.</summary>
    public string ExposureText => Exposure is double s ? $"{QuantityText.Number(s)} s" : "exposure unknown";

    /// <summary>Temperature in words.</summary>
    public string TemperatureText => Temperature is double c ? QuantityText.Temperature(c) : "temperature unknown";

    /// <summary>Temperature in whole degrees, for the heading of a column.</summary>
    public string ColumnText =>
        Temperature is double c
            ? QuantityText.Degrees(Math.Round(c, MidpointRounding.AwayFromZero) + 0.0)
            : "temperature unknown";
}
