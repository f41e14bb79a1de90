using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>The camera on one page: the answer, the numbers, what to do, the findings.</summary>
internal static class SummarySection
{
    /// <summary>The first page of a report: what was found, what to do, what to know.</summary>
    public static ReportSection Compose(CameraProfile profile, IReadOnlyList<NightAnswers> nights)
    {
        var blocks = new List<Block> { ProfileAnswer.Of(profile) };
        if (profile.Modes.Count == 1)
            blocks.AddRange([KeyFigures(profile.Modes[0]), .. InShort.Compose(nights[0])]);
        else if (profile.Modes.Count > 1)
            blocks.Add(Compare(profile.Modes));
        if (profile.Findings.Count > 0)
        {
            blocks.Add(new SubheadingBlock("Findings"));
            blocks.Add(new FindingsBlock([.. profile.Findings.OrderByDescending(finding => finding.Severity)]));
        }
        return new ReportSection(null, null, blocks);
    }

    /// <summary>The first page of one mode among several.</summary>
    public static ReportSection Compose(ModeContext context, NightAnswers nights) =>
        new(
            "The camera at " + context.Label,
            null,
            [new TextBlock(Headline.Sentence(context.Mode)), KeyFigures(context.Mode), .. InShort.Compose(nights)]
        );

    /// <summary>Every number of a mode.</summary>
    public static ReportSection Quantities(ModeContext context) =>
        new("All quantities, with their standard uncertainties", context.Label, [.. Numbers(context.Mode)]);

    private static KeyFiguresBlock KeyFigures(ModeProfile mode)
    {
        string at = mode.DarkCurrent?.ReferenceTemperature is { } temperature
            ? $" at {QuantityText.Degrees(temperature)}"
            : "";
        return new KeyFiguresBlock([
            Figure("Read noise", mode.ReadNoise ?? mode.ReadNoiseAdu),
            Figure("Gain", mode.Gain),
            Figure("Full well", mode.FullWell),
            Figure("Dark current" + at, mode.DarkCurrent?.RateAtReference),
            Figure("Dark current doubles every", mode.DarkCurrent?.DoublingTemperature),
            Figure("Dynamic range", mode.DynamicRange),
        ]);
    }

    private static IEnumerable<Block> Numbers(ModeProfile mode)
    {
        yield return new TableBlock(
            ["Quantity", "Value", "Samples", "Method"],
            [
                .. ProfileQuantities
                    .Of(mode)
                    .Where(named => named.Quantity is not null)
                    .Select(named =>
                        (IReadOnlyList<string>)
                            [
                                named.Label,
                                QuantityText.Of(named.Quantity),
                                QuantityText.Count(named.Quantity!.Samples),
                                named.Quantity.Method,
                            ]
                    ),
            ],
            [0.275, 0.26, 0.095, 0.37]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 2,
        };
        if (mode.Channels.Count > 0)
        {
            yield return new SubheadingBlock("By colour");
            yield return Channels(mode.Channels);
        }
    }

    private static TableBlock Channels(IReadOnlyList<ChannelProfile> channels)
    {
        string[] names = [.. channels.Select(channel => channel.Name)];
        IReadOnlyList<NamedQuantity>[] columns = [.. channels.Select(ProfileQuantities.Of)];
        IEnumerable<IReadOnlyList<string>> rows = Enumerable
            .Range(0, columns[0].Count)
            .Where(row => columns.Any(column => column[row].Quantity is not null))
            .Select(row =>
                (IReadOnlyList<string>)
                    [Labelled(columns, row), .. columns.Select(column => TableCell.Of(column[row].Quantity))]
            );
        return new TableBlock(["Quantity", .. names], [.. rows], [0.28, .. names.Select(_ => 0.72 / names.Length)])
        {
            FirstNumberColumn = 1,
        };
    }

    private static string Labelled(IReadOnlyList<NamedQuantity>[] columns, int row)
    {
        string unit = QuantityText.Unit(
            columns.Select(column => column[row].Quantity?.Unit).First(unit => unit is not null)!
        );
        return unit.Length == 0 ? columns[0][row].Label : $"{columns[0][row].Label}, {unit}";
    }

    private static TableBlock Compare(IReadOnlyList<ModeProfile> modes) =>
        new(
            ["Setting", "Read noise, e⁻", "Gain, e⁻/ADU", "Full well, e⁻", "Dark current, e⁻/px/s", "Doubling, °C"],
            [
                .. modes.Select(mode =>
                    (IReadOnlyList<string>)
                        [
                            ModeLabel.Text(mode.Settings),
                            TableCell.Of(mode.ReadNoise),
                            TableCell.Of(mode.Gain),
                            TableCell.Of(mode.FullWell),
                            Dark(mode.DarkCurrent),
                            TableCell.Of(mode.DarkCurrent?.DoublingTemperature),
                        ]
                ),
            ],
            [0.15, 0.17, 0.18, 0.14, 0.22, 0.14]
        )
        {
            FirstNumberColumn = 1,
        };

    private static string Dark(DarkCurrentProfile? dark) =>
        dark?.RateAtReference is null
            ? "–"
            : TableCell.Of(dark.RateAtReference)
                + (dark.ReferenceTemperature is { } temperature ? $" at {QuantityText.Degrees(temperature)}" : "");

    private static KeyFigure Figure(string label, Measurement? quantity) =>
        quantity is null
            ? new KeyFigure(label, QuantityText.NotMeasured, "see the findings")
            : new KeyFigure(
                label,
                QuantityText.Number(quantity.Value, quantity.StandardUncertainty),
                QuantityText.Unit(quantity.Unit)
            );
}
