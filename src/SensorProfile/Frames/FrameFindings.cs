using SensorProfile.Frames.Headers;

namespace SensorProfile.Frames;

/// <summary>
/// The code of every finding from this room. Scripts may rely on codes, so their meaning never changes.
/// </summary>
/// <remarks>
/// The sentences for header codes are in <see cref="HeaderFindings"/>, the others where the finding is made.
/// </remarks>
internal static class FrameFindings
{
    /// <summary>Neither header nor table gives the kind of a frame.</summary>
    public const string KindMissing = "kind-missing";

    /// <summary>The frame type in the header is an unknown word.</summary>
    public const string KindNotUnderstood = "kind-not-understood";

    /// <summary>The kind comes from file or folder names, as requested.</summary>
    public const string KindFromName = "kind-from-name";

    /// <summary>
    /// The file or folder name suggests another kind than the header (flats saved as lights, for example).
    /// </summary>
    public const string KindContradictsName = "kind-contradicts-name";

    /// <summary>A stack or master frame among raw frames: left out.</summary>
    public const string StackedFrame = "stacked-frame";

    /// <summary>No exposure in the header.</summary>
    public const string ExposureMissing = "exposure-missing";

    /// <summary>Negative, infinite or absurd exposure: unknown.</summary>
    public const string ExposureInvalid = "exposure-invalid";

    /// <summary>Exposure 0 in a frame that is not a bias.</summary>
    public const string ExposureZero = "exposure-zero";

    /// <summary>EXPTIME and EXPOSURE differ.</summary>
    public const string ExposureContradicts = "exposure-contradicts";

    /// <summary>A bias with an exposure as long as a dark's.</summary>
    public const string BiasExposureLong = "bias-exposure-long";

    /// <summary>No sensor temperature in the header.</summary>
    public const string TemperatureMissing = "temperature-missing";

    /// <summary>A sentinel for "not known" (−273.15, −200, 999 …): unknown.</summary>
    public const string TemperatureSentinel = "temperature-sentinel";

    /// <summary>Outside −100…+80 °C: unknown.</summary>
    public const string TemperatureImpossible = "temperature-impossible";

    /// <summary>One value for hours although the set temperature or the elapsed time contradicts it: unknown.</summary>
    public const string TemperatureStuck = "temperature-stuck";

    /// <summary>One value for hours that a working cooler could hold; used.</summary>
    public const string TemperatureConstant = "temperature-constant";

    /// <summary>The reading equals the set temperature in every frame; used.</summary>
    public const string TemperatureIsSetPoint = "temperature-is-set-point";

    /// <summary>A reading in steps of a degree or so, or of the camera body instead of the sensor; used.</summary>
    public const string TemperatureCoarse = "temperature-coarse";

    /// <summary>Interpolated between readings that the capture table gives for other frames.</summary>
    public const string TemperatureTyped = "temperature-typed";

    /// <summary>The probe reads in coarse steps and jumps back and forth between them.</summary>
    public const string TemperatureSteps = "temperature-steps";

    /// <summary>The temperature drifted within a series, which was split or keeps the drift.</summary>
    public const string TemperatureDrift = "temperature-drift";

    /// <summary>
    /// Longer darks are systematically colder or warmer: exposure and temperature cannot be separated.
    /// </summary>
    public const string TemperatureFollowsExposure = "temperature-follows-exposure";

    /// <summary>A number written with a decimal comma; accepted.</summary>
    public const string DecimalComma = "decimal-comma";

    /// <summary>A word in place of a number; ignored.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>An invalid binning; taken as 1x1.</summary>
    public const string BinningUnreadable = "binning-unreadable";

    /// <summary>Some or all frames do not state their gain (or ISO) setting.</summary>
    public const string GainMissing = "gain-missing";

    /// <summary>Some or all frames do not state their offset setting.</summary>
    public const string OffsetMissing = "offset-missing";

    /// <summary>A setting (gain, offset, ISO, binning, read-out mode) varies among one camera's frames.</summary>
    public const string SettingChanges = "setting-changes";

    /// <summary>No start time.</summary>
    public const string TimeMissing = "time-missing";

    /// <summary>A time stamp that cannot be read.</summary>
    public const string TimeUnreadable = "time-unreadable";

    /// <summary>A date without a time of day.</summary>
    public const string TimeDateOnly = "time-date-only";

    /// <summary>Only local time is given.</summary>
    public const string TimeLocalOnly = "time-local-only";

    /// <summary>A time system other than UTC.</summary>
    public const string TimeNotUtc = "time-not-utc";

    /// <summary>The camera's clock without a time zone: used as is.</summary>
    public const string TimeZoneMissing = "time-zone-missing";

    /// <summary>DATE-OBS equals the local time of the same header.</summary>
    public const string TimeMaybeLocal = "time-maybe-local";

    /// <summary>Stored codes follow a curve, which was inverted.</summary>
    public const string CurvedCodes = "curved-codes";

    /// <summary>A file asks its converter for corrections, which were not applied.</summary>
    public const string CorrectionsNotApplied = "corrections-not-applied";

    /// <summary>Left out because of what the camera did to the samples before it stored them.</summary>
    public const string TreatedInCamera = "treated-in-camera";

    /// <summary>An invalid filter pattern.</summary>
    public const string ColourFilterUnreadable = "colour-filter-unreadable";

    /// <summary>An unknown ROWORDER value.</summary>
    public const string RowOrderUnknown = "row-order-unknown";

    /// <summary>One camera with two filter patterns.</summary>
    public const string ColourFilterDiffers = "colour-filter-differs";

    /// <summary>Frames of several cameras.</summary>
    public const string SeveralCameras = "several-cameras";

    /// <summary>A few frames of another size among many of one camera and binning.</summary>
    public const string FrameSizeDiffers = "frame-size-differs";

    /// <summary>A file reached by two paths.</summary>
    public const string DuplicatePath = "duplicate-path";

    /// <summary>Two files with the same bytes: the copy is left out.</summary>
    public const string DuplicateContent = "duplicate-content";

    /// <summary>Two frames that claim to have started at the same instant.</summary>
    public const string SameStartTime = "same-start-time";

    /// <summary>A file with several images, of which the first was used.</summary>
    public const string SeveralImages = "several-images";

    /// <summary>Files that cannot be read.</summary>
    public const string FileUnreadable = "file-unreadable";

    /// <summary>A folder that cannot be opened.</summary>
    public const string FolderUnreadable = "folder-unreadable";

    /// <summary>A path that does not exist.</summary>
    public const string PathMissing = "path-missing";

    /// <summary>No readable and usable frame was found.</summary>
    public const string NoFrames = "no-frames";

    /// <summary>The table is not separated by commas.</summary>
    public const string CaptureTableDelimiter = "capture-table-delimiter";

    /// <summary>The capture table has unknown columns.</summary>
    public const string CaptureTableColumns = "capture-table-columns";

    /// <summary>The capture table is not UTF-8.</summary>
    public const string CaptureTableEncoding = "capture-table-encoding";

    /// <summary>The table uses decimal commas.</summary>
    public const string CaptureTableDecimalComma = "capture-table-decimal-comma";

    /// <summary>Rows that match no file.</summary>
    public const string CaptureTableNoFile = "capture-table-no-file";

    /// <summary>Rows whose bare name matches several files, or files matched by several rows.</summary>
    public const string CaptureTableAmbiguous = "capture-table-ambiguous";
}
