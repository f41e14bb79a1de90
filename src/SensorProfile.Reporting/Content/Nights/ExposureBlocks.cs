using SensorProfile.Decisions.Exposure;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Nights;

/// <summary>Gain settings and exposures.</summary>
internal static class ExposureBlocks
{
    /// <summary>The settings side by side under one sky.</summary>
    public static TableBlock Modes(GainChoiceAnswer answer) =>
        new(
            [
                "Setting",
                "Read noise",
                "Full well",
                "Range",
                "Shortest useful",
                $"{DecisionText.Percent(100 * answer.Fill)} full after",
                $"Read noise adds at {QuantityText.Number(answer.ExposureSeconds)} s",
            ],
            [
                .. answer.Modes.Select(row =>
                    (IReadOnlyList<string>)
                        [
                            ModeLabel.Text(row.Settings)
                                + (answer.Modes.Count > 1 && row.Settings == answer.Advised ? " (advised)" : ""),
                            QuantityText.Of(row.ReadNoise),
                            QuantityText.Of(row.FullWell),
                            row.DynamicRange is { } range ? $"{QuantityText.Number(range.Value, 3)} stops" : "–",
                            QuantityText.Of(row.ExposureNeeded),
                            row.LongestExposure is { } longest ? DecisionText.Duration(longest.Value) : "–",
                            DecisionText.Percent(100 * row.ReadNoiseShare),
                        ]
                ),
            ],
            [0.17, 0.17, 0.16, 0.1, 0.15, 0.13, 0.12]
        )
        {
            FirstNumberColumn = 1,
        };

    /// <summary>One row for each sky, at the setting that is advised there.</summary>
    public static TableBlock Skies(IReadOnlyList<GainChoiceAnswer> skies) =>
        new(
            ["Sky", "Setting", "Shortest useful", "Sky and dark current fill half the well after"],
            [
                .. skies.Select(sky =>
                    (IReadOnlyList<string>)
                        [
                            sky.Sky.Name,
                            ModeLabel.Text(sky.Advised),
                            DecisionText.Of(sky, QuantityNames.ShortestExposure, "–"),
                            sky.Quantities.GetValueOrDefault(QuantityNames.LongestExposure) is { } longest
                                ? DecisionText.Duration(longest.Value)
                                : "–",
                        ]
                ),
            ],
            [0.32, 0.24, 0.2, 0.24]
        )
        {
            FirstNumberColumn = 2,
        };
}
