using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using static System.FormattableString;

namespace SensorProfile.Reporting.Answers;

/// <summary>The numbers of one mode, by the names of profile.json.</summary>
internal static class ModeQuantities
{
    public static IReadOnlyList<AnswerQuantity> Of(ModeProfile mode) =>
        [
            new(QuantityNames.ReadNoise, "read noise", mode.ReadNoise),
            new(QuantityNames.Gain, "gain", mode.Gain),
            new(QuantityNames.FullWell, "full well", mode.FullWell),
            new(QuantityNames.DynamicRange, "dynamic range", mode.DynamicRange),
            new(QuantityNames.BiasLevel, "bias level", mode.BiasLevel),
            new(QuantityNames.SaturationLevel, "saturation level", mode.SaturationLevel),
            new(QuantityNames.LinearityError, "linearity error", mode.LinearityError),
            new(QuantityNames.ResponseNonuniformity, "response nonuniformity", mode.ResponseNonuniformity),
            new(QuantityNames.RateAtReference, Rate(mode.DarkCurrent), mode.DarkCurrent?.RateAtReference),
            new(QuantityNames.DoublingTemperature, "dark current doubles every", mode.DarkCurrent?.DoublingTemperature),
        ];

    public static AnswerTable Table(ModeProfile mode) =>
        new(
            ModeLabel.Text(mode.Settings),
            ["", ">", ""],
            [
                .. Of(mode)
                    .Select(q =>
                        (IReadOnlyList<string>)
                            [
                                q.Label,
                                q.Value is { } value
                                    ? QuantityText.Number(value.Value, value.StandardUncertainty)
                                    : q.Absent,
                                QuantityText.Unit(q.Value?.Unit ?? ""),
                            ]
                    ),
            ]
        );

    /// <summary>The colours of the filter array side by side; no rows for a monochrome camera.</summary>
    public static AnswerTable Channels(ModeProfile mode) =>
        new(
            "Colour by colour",
            ["", ">read noise", ">gain", ">full well", ">dark current"],
            [
                .. mode.Channels.Select(c =>
                    (IReadOnlyList<string>)
                        [
                            c.Name,
                            QuantityText.Of(c.ReadNoise),
                            QuantityText.Of(c.Gain),
                            QuantityText.Of(c.FullWell),
                            QuantityText.Of(c.DarkRate ?? c.DarkRateFromVariance),
                        ]
                ),
            ]
        );

    /// <summary>Darks without a temperature: a row for each night, or for each group of a night.</summary>
    public static AnswerTable Nights(ModeProfile mode) =>
        new AnswerTable(
            "Darks of unknown temperature",
            ["from (UTC)", ">frames", ">warmer than the coldest of the night", ">dark current"],
            [
                .. mode.DarkNights.Select(n =>
                    (IReadOnlyList<string>)
                        [
                            n.StartUtc is { } start ? Invariant($"{start:yyyy-MM-dd HH:mm}") : "unknown",
                            QuantityText.Count(n.Frames),
                            n.AboveColdest switch
                            {
                                null => "",
                                { Value: > 0 } above => QuantityText.Of(above),
                                _ => "the coldest",
                            },
                            QuantityText.Of(n.TypicalRate ?? n.RateFromVariance),
                        ]
                ),
            ]
        ).WithoutEmptyColumns();

    private static string Rate(DarkCurrentProfile? dark) =>
        dark?.ReferenceTemperature is { } celsius
            ? $"dark current at {QuantityText.Temperature(celsius)}"
            : "dark current";
}
