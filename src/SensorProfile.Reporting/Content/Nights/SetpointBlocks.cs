using SensorProfile.Decisions.Setpoint;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>How cold: the curve, the skies side by side, the nights.</summary>
internal static class SetpointBlocks
{
    /// <summary>The caption of the curve.</summary>
    public static string Caption(IReadOnlyList<SetpointAnswer> skies)
    {
        SetpointAnswer first = skies[0];
        string what =
            $"What dark current adds to the noise of a {QuantityText.Number(first.ExposureSeconds)} s light, "
            + "against the temperature of the sensor. ";
        string lines =
            skies.Count == 1
                ? "Blue: the typical pixel with its 95 % band; vermillion: the level that "
                    + $"{QuantityText.Number(100 * first.Share)} % of the pixels do not exceed. "
                : $"Solid: the level that {QuantityText.Number(100 * first.Share)} % of the pixels do not exceed; dotted: the "
                    + "typical pixel; the marks show the temperature that each sky asks for. ";
        return what
            + lines
            + "Outside the measured range the curve is extrapolated by the temperature law."
            + (
                first.ColdestHeld is { } held
                    ? $" On the warmest night the cooler holds {QuantityText.Temperature(held)}."
                    : ""
            );
    }

    /// <summary>One row for each sky.</summary>
    public static TableBlock Table(IReadOnlyList<SetpointAnswer> skies)
    {
        string share = $"{QuantityText.Number(100 * skies[0].Share)} % of pixels";
        return new TableBlock(
            ["Sky", "e⁻/px/s", "Advised", "Typical pixel", share, "< 1 % gain below"],
            [
                .. skies.Select(sky =>
                    (IReadOnlyList<string>)
                        [
                            sky.Sky.Name,
                            DecisionText.BareRate(sky.Sky),
                            sky.Quantities.GetValueOrDefault(QuantityNames.Setpoint) is { } whole
                                ? QuantityText.Number(whole.Value) + " °C"
                                : "–",
                            DecisionText.Of(sky, QuantityNames.SetpointTypical, "beyond the profile"),
                            DecisionText.Of(sky, QuantityNames.Setpoint99, "beyond the profile"),
                            DecisionText.Of(sky, QuantityNames.DiminishingReturns, "beyond the profile"),
                        ]
                ),
            ],
            [0.26, 0.1, 0.13, 0.17, 0.17, 0.17]
        )
        {
            FirstNumberColumn = 1,
        };
    }

    /// <summary>Where the noise of a light comes from.</summary>
    public static IEnumerable<Block> Noise(SetpointAnswer answer)
    {
        if (answer.Noise is not { } noise)
            yield break;
        yield return new SubheadingBlock($"{LightNoiseLines.Title(noise, answer)}, {answer.Sky.Name}");
        yield return new TableBlock(
            ["", "Noise", "Share of its variance"],
            LightNoiseLines.Of(noise),
            [0.5, 0.28, 0.22]
        )
        {
            FirstNumberColumn = 1,
        };
    }

    /// <summary>What the nights allow.</summary>
    public static IEnumerable<Block> Nights(SetpointAnswer answer)
    {
        bool cooled = !answer.Uncooled;
        string share = $"Pixel at {QuantityText.Number(100 * answer.Share)} %";
        if (answer.Nights.Count > 0)
        {
            yield return new SubheadingBlock(
                cooled ? "How often the cooler reaches it" : "How often the sensor is that cold"
            );
            yield return new TableBlock(
                ["Sensor", "Nights", "Share of nights", "Typical pixel", share],
                [
                    .. answer.Nights.Select(night =>
                        (IReadOnlyList<string>)
                            [
                                QuantityText.Temperature(night.Sensor),
                                QuantityText.Count(night.Nights),
                                DecisionText.Percent(100 * night.Share),
                                AddedNoise.Of(night.ExtraTypical),
                                night.ExtraAtShare is { } extra ? AddedNoise.Of(extra) : "–",
                            ]
                    ),
                ],
                [0.2, 0.2, 0.2, 0.2, 0.2]
            )
            {
                FirstNumberColumn = 0,
            };
        }
        if (answer.Ambient.Count is 0 or > 24)
            yield break;
        yield return new SubheadingBlock("What each night allows");
        yield return new TableBlock(
            ["Night", "Air", "Sensor", "Typical pixel", share, ""],
            [
                .. answer.Ambient.Select(row =>
                    (IReadOnlyList<string>)
                        [
                            row.Label,
                            QuantityText.Temperature(row.Ambient),
                            QuantityText.Temperature(row.Sensor),
                            AddedNoise.Of(row.ExtraTypical),
                            row.ExtraAtShare is { } extra ? AddedNoise.Of(extra) : "–",
                            (row.WithinLoss ? "within your loss" : "beyond your loss")
                                + (row.Extrapolated ? ", outside the measured range" : ""),
                        ]
                ),
            ],
            [0.16, 0.11, 0.12, 0.14, 0.15, 0.32]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 4,
        };
    }

    /// <summary>The figure.</summary>
    public static FigureBlock? Figure(IReadOnlyList<SetpointAnswer> skies, FigureCounter figures, string table) =>
        SetpointPlot.Draw(skies) is { } panel
            ? new FigureBlock(figures.Next(), Caption(skies), [panel]) { Table = table }
            : null;
}
