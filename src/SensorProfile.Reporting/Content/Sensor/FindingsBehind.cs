namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Which findings say why a part of the report is missing, by their codes.</summary>
internal static class FindingsBehind
{
    private static readonly string[] darks =
    [
        FindingCodes.DarkBelowBlackLevel,
        FindingCodes.DarkBelowLimit,
        FindingCodes.DarkCurrentCarried,
        FindingCodes.DarkCurrentNotCarried,
        FindingCodes.DarkFloor,
        FindingCodes.DarkFormsDisagree,
        FindingCodes.DarkNotLinear,
        FindingCodes.DarkRateNotResolved,
        FindingCodes.DarkRateScatter,
        FindingCodes.DarkSaturated,
        FindingCodes.DarkTemperatureUnknown,
        FindingCodes.FewDarkExposures,
        FindingCodes.LacksDarkCurrent,
        FindingCodes.TemperaturesByHotPixels,
    ];

    /// <summary>What keeps the noise of single pixels from being measured.</summary>
    public static IReadOnlyList<string> PixelNoise { get; } =
    [
        FindingCodes.BiasExposureLong,
        FindingCodes.BiasPairsDisagree,
        FindingCodes.LacksPixelNoiseMap,
        FindingCodes.LacksReadNoise,
    ];

    /// <summary>What keeps gain and full well from being measured.</summary>
    public static IReadOnlyList<string> PhotonTransfer { get; } =
    [
        FindingCodes.DarkSaturated,
        FindingCodes.FlatPairLeftOut,
        FindingCodes.FlatResidualNotMeasured,
        FindingCodes.GainClaimed,
        FindingCodes.GainMissing,
        FindingCodes.GainMissingForElectrons,
        FindingCodes.GainNotMeasurable,
        FindingCodes.LacksGain,
        FindingCodes.PhotonTransferIntercept,
        FindingCodes.SaturationNotReached,
    ];

    /// <summary>What keeps linearity from being judged.</summary>
    public static IReadOnlyList<string> Linearity { get; } =
    [
        FindingCodes.BiasExposureLong,
        FindingCodes.BlackLevelFollowsExposure,
        FindingCodes.DarkNotLinear,
        FindingCodes.ExposureContradicts,
        FindingCodes.ExposureInvalid,
        FindingCodes.ExposureMissing,
        FindingCodes.ExposureZero,
        FindingCodes.FewDarkExposures,
        FindingCodes.LacksLinearity,
        FindingCodes.LinearityNotTestable,
        FindingCodes.TemperatureFollowsExposure,
    ];

    /// <summary>What keeps dark signal and dark current from being measured.</summary>
    public static IReadOnlyList<string> DarkSignal { get; } =
    [
        .. darks,
        FindingCodes.BiasExposureLong,
        FindingCodes.BlackClipped,
        FindingCodes.BlackLevelDrift,
        FindingCodes.BlackLevelFollowsExposure,
        FindingCodes.BlackLevelFollowsTemperature,
        FindingCodes.BlackLevelJumps,
        FindingCodes.BlackLevelPinned,
        FindingCodes.BlackLevelSetsDiffer,
        FindingCodes.DoublingTemperatureUncertain,
        FindingCodes.ExposureContradicts,
        FindingCodes.ExposureInvalid,
        FindingCodes.ExposureMissing,
        FindingCodes.ExposureZero,
        FindingCodes.LacksTemperatureLaw,
        FindingCodes.TemperatureCoarse,
        FindingCodes.TemperatureConstant,
        FindingCodes.TemperatureContradicted,
        FindingCodes.TemperatureDrift,
        FindingCodes.TemperatureFollowsExposure,
        FindingCodes.TemperatureImpossible,
        FindingCodes.TemperatureIsSetPoint,
        FindingCodes.TemperatureLawMisfit,
        FindingCodes.TemperatureLawNotDecided,
        FindingCodes.TemperatureLawNotDetermined,
        FindingCodes.TemperatureLawsNotComparable,
        FindingCodes.TemperatureMissing,
        FindingCodes.TemperatureRangeNarrow,
        FindingCodes.TemperatureScatter,
        FindingCodes.TemperatureSentinel,
        FindingCodes.TemperatureSteps,
        FindingCodes.TemperatureStuck,
        FindingCodes.TemperatureTyped,
        FindingCodes.TemperaturesNotReplaced,
        FindingCodes.TooFewTemperatures,
    ];

    /// <summary>What keeps defect pixels and glow from being measured.</summary>
    public static IReadOnlyList<string> Defects { get; } = [.. darks, FindingCodes.HotPixelsSuppressed];
}
