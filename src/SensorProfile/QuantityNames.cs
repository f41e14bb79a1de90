using System.Globalization;

namespace SensorProfile;

/// <summary>The names by which scripts know a quantity: in profile.json, in answers and in comparisons.</summary>
/// <remarks>A name is never changed nor given another meaning. A colour's own follows as in "gainOfR".</remarks>
internal static class QuantityNames
{
    // of a profile and its channels
    public const string BiasLevel = "biasLevel";
    public const string BiasStability = "biasStability";
    public const string ColumnNoise = "columnNoise";
    public const string DarkCurrent = "darkCurrent";
    public const string DarkRate = "darkRate";
    public const string DarkRateFromVariance = "darkRateFromVariance";
    public const string DoublingTemperature = "doublingTemperature";
    public const string DynamicRange = "dynamicRange";
    public const string FlatResidual = "flatResidual";
    public const string FlatResidualOverAreas = "flatResidualOverAreas";
    public const string FullWell = "fullWell";
    public const string Gain = "gain";
    public const string LinearityError = "linearityError";
    public const string RateAtReference = "rateAtReference";
    public const string ReadNoise = "readNoise";
    public const string ReadNoiseAdu = "readNoiseAdu";
    public const string ResponseNonuniformity = "responseNonuniformity";
    public const string RowNoise = "rowNoise";
    public const string SaturationLevel = "saturationLevel";

    // of the decisions
    public const string CoverageAgainst = "coverageAgainst";
    public const string CoverageFlickering = "coverageFlickering";
    public const string CoverageGlow = "coverageGlow";
    public const string CoverageHot = "coverageHot";
    public const string CoverageTypical = "coverageTypical";
    public const string Darks = "darks";
    public const string DiminishingReturns = "diminishingReturns";
    public const string DiskSpace = "diskSpace";
    public const string EquivalentFrames = "equivalentFrames";
    public const string ExposureNeeded = "exposureNeeded";
    public const string Extra99 = "extra99";
    public const string ExtraTypical = "extraTypical";
    public const string FlatLevel = "flatLevel";
    public const string FlatLevelAdu = "flatLevelAdu";
    public const string Flats = "flats";
    public const string GradientLeft = "gradientLeft";
    public const string Level = "level";
    public const string LongestExposure = "longestExposure";
    public const string LossAt20 = "lossAt20";
    public const string LossAt20Flats = "lossAt20Flats";
    public const string LossByPattern = "lossByPattern";
    public const string LossWorst = "lossWorst";
    public const string Setpoint = "setpoint";
    public const string Setpoint99 = "setpoint99";
    public const string SetpointTypical = "setpointTypical";
    public const string ShortestExposure = "shortestExposure";
    public const string ToleranceColder = "toleranceColder";
    public const string ToleranceExposure = "toleranceExposure";
    public const string ToleranceWarmer = "toleranceWarmer";
    public const string TotalFrames = "totalFrames";
    public const string TotalTime = "totalTime";
    public const string UncertaintyHot = "uncertaintyHot";
    public const string UncertaintyTypical = "uncertaintyTypical";

    // over the years
    public const string DarkRateByPixel = "darkRateByPixel";
    public const string DarkRateChange = "darkRateChange";
    public const string DarkRatePerYear = "darkRatePerYear";
    public const string GlowTotal = "glowTotal";
    public const string GrowingPatch = "growingPatch";
    public const string HealedHotPixelsPerYear = "healedHotPixelsPerYear";
    public const string NewHotPixelsPerYear = "newHotPixelsPerYear";
    public const string NewLessHealed = "newLessHealed";

    private const string HotPixelsAbove = "hotPixelsAbove";

    /// <summary>"hotPixelsAbove0.1": pixels above a rate.</summary>
    /// <param name="rate">e⁻ per pixel and second.</param>
    public static string HotPixelsAboveRate(double rate) =>
        string.Create(CultureInfo.InvariantCulture, $"{HotPixelsAbove}{rate}");

    /// <summary>Whether a name is that of pixels above some rate.</summary>
    public static bool IsHotPixelCount(string name) => name.StartsWith(HotPixelsAbove, StringComparison.Ordinal);

    /// <summary>"0.1" of "hotPixelsAbove0.1".</summary>
    public static string HotPixelRate(string name) => name[HotPixelsAbove.Length..];
}
