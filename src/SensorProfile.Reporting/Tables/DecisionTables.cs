using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Shots;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;

namespace SensorProfile.Reporting.Tables;

/// <summary>The lists of the answers as CSV (RFC 4180, invariant numbers).</summary>
internal static class DecisionTables
{
    /// <summary>The masters of a darks plan.</summary>
    /// <param name="answer">The plan.</param>
    /// <param name="writer">The writer that receives the table.</param>
    public static void Write(PlanAnswer answer, TextWriter writer) =>
        Write(
            writer,
            [
                "exposure_s",
                "temperature_c",
                "gain",
                "offset",
                "iso",
                "binning",
                "readout",
                "frames",
                "frames_low",
                "frames_high",
                "serves_from_c",
                "serves_to_c",
                "clock_time_s",
                "disk_mb",
                "when",
                "reason",
            ],
            answer.Masters.Select(m =>
                new object?[]
                {
                    m.Exposure,
                    m.Temperature,
                    m.Settings.Gain,
                    m.Settings.Offset,
                    m.Settings.Iso,
                    m.Settings.Binning,
                    m.Settings.Readout,
                    m.Frames,
                    m.FramesInterval.Low,
                    m.FramesInterval.High,
                    m.ServesFrom,
                    m.ServesTo,
                    m.Seconds,
                    Math.Round(m.Bytes / 1e6, 1),
                    PlanWords.When(m),
                    PlanWords.Reason(answer, m),
                }
            )
        );

    /// <summary>The levels that flats could have.</summary>
    /// <param name="answer">The plan.</param>
    /// <param name="writer">The writer that receives the table.</param>
    public static void Write(FlatPlanAnswer answer, TextWriter writer) =>
        Write(
            writer,
            ["full_well_percent", "level_e", "level_adu", "flats", "bend_gradient_stack_noise", "remark"],
            answer.Levels.Select(l =>
                new object?[] { 100 * l.Share, l.Electrons, l.Adu, l.Flats, l.Bend, FlatPlanDocument.Word(answer, l) }
            )
        );

    /// <summary>The shot list.</summary>
    /// <param name="answer">The shot list.</param>
    /// <param name="writer">The writer that receives the table.</param>
    public static void Write(ShotListAnswer answer, TextWriter writer) =>
        Write(
            writer,
            ["step", "kind", "exposure_s", "temperature_c", "level_pct", "frames", "clock_time_s", "reason"],
            answer.Shots.Select(
                (s, i) =>
                    new object?[]
                    {
                        i + 1,
                        EnumWord.Of(s.Kind),
                        s.Exposure,
                        s.Temperature,
                        s.LevelPercent,
                        s.Frames,
                        s.Seconds,
                        ShotWords.Purpose(s),
                    }
            )
        );

    private static void Write(TextWriter writer, IReadOnlyList<string> header, IEnumerable<object?[]> rows)
    {
        using var csv = new CsvWriter(
            writer,
            new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" },
            leaveOpen: true
        );
        foreach (string name in header)
            csv.WriteField(name);
        csv.NextRecord();
        foreach (object?[] row in rows)
        {
            foreach (object? field in row)
                csv.WriteField(CsvText.Text(field));
            csv.NextRecord();
        }
    }
}
