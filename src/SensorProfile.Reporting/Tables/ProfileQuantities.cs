using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Reporting.Tables;

/// <summary>The quantities of a mode or a channel, in the order in which reports print them.</summary>
internal static class ProfileQuantities
{
    /// <summary>Every quantity of a mode.</summary>
    public static IReadOnlyList<NamedQuantity> Of(ModeProfile mode) =>
        [
            new(QuantityNames.ReadNoise, "Read noise", mode.ReadNoise),
            new(QuantityNames.ReadNoiseAdu, "Read noise in ADU", mode.ReadNoiseAdu),
            new(QuantityNames.Gain, "Conversion gain", mode.Gain),
            new(QuantityNames.BiasLevel, "Bias level", mode.BiasLevel),
            new(QuantityNames.FullWell, "Full well", mode.FullWell),
            new(QuantityNames.SaturationLevel, "Saturation level", mode.SaturationLevel),
            new(QuantityNames.DynamicRange, "Dynamic range", mode.DynamicRange),
            new(QuantityNames.LinearityError, "Linearity error", mode.LinearityError),
            new(QuantityNames.ResponseNonuniformity, "Response nonuniformity", mode.ResponseNonuniformity),
            new(QuantityNames.FlatResidual, "Flat-field residual, pixel to pixel", mode.FlatResidual),
            new(QuantityNames.FlatResidualOverAreas, "Flat-field residual, over areas", mode.FlatResidualOverAreas),
            new(
                QuantityNames.RateAtReference,
                "Dark current" + At(mode.DarkCurrent?.ReferenceTemperature),
                mode.DarkCurrent?.RateAtReference
            ),
            new(
                QuantityNames.DoublingTemperature,
                "Doubling temperature" + At(mode.DarkCurrent?.ReferenceTemperature),
                mode.DarkCurrent?.DoublingTemperature
            ),
            new(QuantityNames.RowNoise, "Row noise", mode.FixedPattern?.RowNoise),
            new(QuantityNames.ColumnNoise, "Column noise", mode.FixedPattern?.ColumnNoise),
            new(QuantityNames.BiasStability, "Bias stability", mode.FixedPattern?.BiasStability),
        ];

    /// <summary>Every quantity of a channel.</summary>
    public static IReadOnlyList<NamedQuantity> Of(ChannelProfile channel) =>
        [
            new(QuantityNames.ReadNoise, "Read noise", channel.ReadNoise),
            new(QuantityNames.ReadNoiseAdu, "Read noise in ADU", channel.ReadNoiseAdu),
            new(QuantityNames.Gain, "Conversion gain", channel.Gain),
            new(QuantityNames.BiasLevel, "Bias level", channel.BiasLevel),
            new(QuantityNames.FullWell, "Full well", channel.FullWell),
            new(QuantityNames.SaturationLevel, "Saturation level", channel.SaturationLevel),
            new(QuantityNames.DynamicRange, "Dynamic range", channel.DynamicRange),
            new(QuantityNames.LinearityError, "Linearity error", channel.LinearityError),
            new(QuantityNames.ResponseNonuniformity, "Response nonuniformity", channel.ResponseNonuniformity),
            new(QuantityNames.DarkRate, "Dark current, from the level", channel.DarkRate),
            new(QuantityNames.DarkRateFromVariance, "Dark current, from the variance", channel.DarkRateFromVariance),
        ];

    private static string At(double? temperature) =>
        temperature is { } celsius ? $" at {QuantityText.Number(celsius)} °C" : "";
}
