namespace SensorProfile;

/// <summary>Codes of the findings that a measurement gives; scripts may rely on them.</summary>
internal static class MeasurementCodes
{
    public const string OtherCamera = "frame-of-another-camera";
    public const string FrameLeftOut = "frame-left-out";
    public const string BlankPixels = "pixels-without-value";
    public const string DamagedFrame = "damaged-frame";
    public const string TornFrame = "torn-frame";
    public const string LevelOutlier = "level-outlier";
    public const string AveragedFrame = "averaged-frame";
    public const string UnusedKind = "kind-not-measured";
    public const string BlackClipped = "black-clipped";
    public const string QuantisationLimited = "quantisation-limited";
    public const string PairsDisagree = "bias-pairs-disagree";
    public const string NeighbourCorrelation = "neighbour-correlation";
    public const string DigitalScaling = "digital-scaling";
    public const string MissingCodes = "missing-codes";
    public const string HotPixelsSuppressed = "hot-pixels-suppressed";
    public const string AveragedSet = "averaged-set";
    public const string TapBoundary = "tap-boundary";
    public const string ResponseStep = "response-step";
    public const string LightDrift = "light-drift";
    public const string RowFlicker = "row-flicker";
    public const string FlatPairLeftOut = "flat-pair-left-out";
    public const string FlatResidualNotMeasured = "flat-residual-not-measured";
    public const string NoPedestal = "no-level-without-light";
    public const string OneLightLevel = "few-light-levels";
    public const string ChannelsDiffer = "channels-differ";
    public const string NotSaturated = "saturation-not-reached";
    public const string NotLinearityTestable = "linearity-not-testable";
    public const string InterceptOff = "photon-transfer-intercept";
    public const string NoTemperature = "dark-temperature-unknown";
    public const string DarkNotResolved = "dark-below-limit";
    public const string BlackClamp = "black-level-pinned";
    public const string FormsDisagree = "dark-forms-disagree";
    public const string DarkSaturated = "dark-saturated";
    public const string NoPicture = "no-picture";
    public const string DarkNotLinear = "dark-not-linear";
    public const string FewExposures = "few-dark-exposures";
    public const string DarksCarried = "dark-current-carried";
    public const string DarksNotCarried = "dark-current-not-carried";
    public const string NoGain = "gain-missing-for-electrons";
    public const string TemperaturesReplaced = "temperatures-by-hot-pixels";
    public const string TemperaturesKept = "temperatures-not-replaced";
    public const string TemperatureContradicted = "temperature-contradicted";
    public const string NightsOrdered = "nights-ordered";
    public const string GainClaimed = "gain-claimed";
    public const string GainNotMeasurable = "gain-not-measurable";
    public const string NotRawResponse = "response-not-raw";
    public const string MaskedBorderUnusable = "masked-border-unusable";
    public const string MaskedBorderDiffers = "masked-border-differs";
    public const string MaskedBorderClamped = "masked-border-clamped";
    public const string MaskedBorderMoves = "masked-border-moves";
    public const string NotFinite = "quantity-not-finite";
    public const string NotMeasured = "not-measured";
}
