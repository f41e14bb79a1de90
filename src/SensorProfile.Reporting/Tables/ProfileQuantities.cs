using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;

namespace SensorProfile.Reporting.Tables;

/// <summary>The quantities of a mode or a channel, in the order in which reports print them.</summary>
internal static class ProfileQuantities
{
    /// <summary>Every quantity of a mode.</summary>
    public static IReadOnlyList<NamedQuantity> Of(ModeProfile mode) =>
        [
            new("readNoise", "Read noise", mode.ReadNoise),
            new("readNoiseAdu", "Read noise in ADU", mode.ReadNoiseAdu),
            new("gain", "Conversion gain", mode.Gain),
            new("biasLevel", "Bias level", mode.BiasLevel),
            new("fullWell", "Full well", mode.FullWell),
            new("saturationLevel", "Saturation level", mode.SaturationLevel),
            new("dynamicRange", "Dynamic range", mode.DynamicRange),
            new("linearityError", "Linearity error", mode.LinearityError),
            new("responseNonuniformity", "Response nonuniformity", mode.ResponseNonuniformity),
            new("flatResidual", "Flat-field residual, pixel to pixel", mode.FlatResidual),
            new("flatResidualOverAreas", "Flat-field residual, over areas", mode.FlatResidualOverAreas),
            new(
                "rateAtReference",
                "Dark current" + At(mode.DarkCurrent?.ReferenceTemperature),
                mode.DarkCurrent?.RateAtReference
            ),
            new(
                "doublingTemperature",
                "Doubling temperature" + At(mode.DarkCurrent?.ReferenceTemperature),
                mode.DarkCurrent?.DoublingTemperature
            ),
            new("rowNoise", "Row noise", mode.FixedPattern?.RowNoise),
            new("columnNoise", "Column noise", mode.FixedPattern?.ColumnNoise),
            new("biasStability", "Bias stability", mode.FixedPattern?.BiasStability),
        ];

    /// <summary>Every quantity of a channel.</summary>
    public static IReadOnlyList<NamedQuantity> Of(ChannelProfile channel) =>
        [
            new("readNoise", "Read noise", channel.ReadNoise),
            new("readNoiseAdu", "Read noise in ADU", channel.ReadNoiseAdu),
            new("gain", "Conversion gain", channel.Gain),
            new("biasLevel", "Bias level", channel.BiasLevel),
            new("fullWell", "Full well", channel.FullWell),
            new("saturationLevel", "Saturation level", channel.SaturationLevel),
            new("dynamicRange", "Dynamic range", channel.DynamicRange),
            new("linearityError", "Linearity error", channel.LinearityError),
            new("responseNonuniformity", "Response nonuniformity", channel.ResponseNonuniformity),
            new("darkRate", "Dark current, from the level", channel.DarkRate),
            new("darkRateFromVariance", "Dark current, from the variance", channel.DarkRateFromVariance),
        ];

    private static string At(double? temperature) =>
        temperature is { } celsius ? $" at {QuantityText.Number(celsius)} °C" : "";
}
