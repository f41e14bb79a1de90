using SensorProfile.Frames.Headers;

namespace SensorProfile.Frames;

/// <summary>
/// The codes of every finding that this room gives; scripts may rely on them, so they never change their meaning.
/// </summary>
/// <remarks>
/// The sentences that go with the header codes stand in <see cref="HeaderFindings"/>, the others where they are found.
/// </remarks>
internal static class FrameFindings
{
    /// <summary>Neither header nor table says what a frame was taken for.</summary>
    public const string KindMissing = "kind-missing";

    /// <summary>The frame type in the header is a word that is not known.</summary>
    public const string KindNotUnderstood = "kind-not-understood";

    /// <summary>The kind comes from file or folder names, as asked.</summary>
    public const string KindFromName = "kind-from-name";

    /// <summary>
    /// File or folder name speaks of another kind than the header (flats saved as lights, for example).
    /// </summary>
    public const string KindContradictsName = "kind-contradicts-name";

    /// <summary>A stack or master frame among raw frames: left out.</summary>
    public const string StackedFrame = "stacked-frame";

    /// <summary>No exposure in the header.</summary>
    public const string ExposureMissing = "exposure-missing";

    /// <summary>Negative, infinite or absurd exposure: unknown.</summary>
    public const string ExposureInvalid = "exposure-invalid";

    /// <summary>Exposure 0 in a frame that is no bias.</summary>
    public const string ExposureZero = "exposure-zero";

    /// <summary>EXPTIME and EXPOSURE differ.</summary>
    public const string ExposureContradicts = "exposure-contradicts";

    /// <summary>A bias with the exposure of a dark.</summary>
    public const string BiasExposureLong = "bias-exposure-long";

    /// <summary>No sensor temperature in the header.</summary>
    public const string TemperatureMissing = "temperature-missing";

    /// <summary>A value that stands for "not known" (−273.15, −200, 999 …): unknown.</summary>
    public const string TemperatureSentinel = "temperature-sentinel";

    /// <summary>Outside −100…+80 °C: unknown.</summary>
    public const string TemperatureImpossible = "temperature-impossible";

    /// <summary>One value across hours although the set temperature or the time says otherwise: unknown.</summary>
    public const string TemperatureStuck = "temperature-stuck";

    /// <summary>One value across hours that a working cooler could hold; used.</summary>
    public const string TemperatureConstant = "temperature-constant";

    /// <summary>The reading equals the set temperature in every frame; used.</summary>
    public const string TemperatureIsSetPoint = "temperature-is-set-point";

    /// <summary>A reading in steps of a degree or so, or of the camera's body and not of its sensor; used.</summary>
    public const string TemperatureCoarse = "temperature-coarse";

    /// <summary>Drawn between readings that the capture table gives for other frames.</summary>
    public const string TemperatureTyped = "temperature-typed";

    /// <summary>The probe reads in coarse steps and jumps between them.</summary>
    public const string TemperatureSteps = "temperature-steps";

    /// <summary>The temperature drifted within a series, which was split or is left with a slope.</summary>
    public const string TemperatureDrift = "temperature-drift";

    /// <summary>Longer darks are colder or warmer throughout: exposure and temperature cannot be told apart.</summary>
    public const string TemperatureFollowsExposure = "temperature-follows-exposure";

    /// <summary>A number written with a decimal comma; understood.</summary>
    public const string DecimalComma = "decimal-comma";

    /// <summary>A word where a number belongs; ignored.</summary>
    public const string NotANumber = "not-a-number";

    /// <summary>Binning that makes no sense; taken as 1x1.</summary>
    public const string BinningUnreadable = "binning-unreadable";

    /// <summary>Some or all frames do not say their gain (or ISO) setting.</summary>
    public const string GainMissing = "gain-missing";

    /// <summary>Some or all frames do not say their offset setting.</summary>
    public const string OffsetMissing = "offset-missing";

    /// <summary>A setting (gain, offset, ISO, binning, read-out mode) changes within one camera's frames.</summary>
    public const string SettingChanges = "setting-changes";

    /// <summary>No time of exposure.</summary>
    public const string TimeMissing = "time-missing";

    /// <summary>A time stamp that cannot be read.</summary>
    public const string TimeUnreadable = "time-unreadable";

    /// <summary>A date without a time of day.</summary>
    public const string TimeDateOnly = "time-date-only";

    /// <summary>Only local time is given.</summary>
    public const string TimeLocalOnly = "time-local-only";

    /// <summary>Another time system than UTC.</summary>
    public const string TimeNotUtc = "time-not-utc";

    /// <summary>The camera's clock without a time zone: used as it stands.</summary>
    public const string TimeZoneMissing = "time-zone-missing";

    /// <summary>DATE-OBS equals the local time of the same header.</summary>
    public const string TimeMaybeLocal = "time-maybe-local";

    /// <summary>Stored codes follow a curve, which was straightened.</summary>
    public const string CurvedCodes = "curved-codes";

    /// <summary>A file asks its converter for corrections, which were not applied.</summary>
    public const string CorrectionsNotApplied = "corrections-not-applied";

    /// <summary>Left out because of what the camera did to the samples before it stored them.</summary>
    public const string TreatedInCamera = "treated-in-camera";

    /// <summary>A filter pattern that is none.</summary>
    public const string ColourFilterUnreadable = "colour-filter-unreadable";

    /// <summary>ROWORDER with an unknown word.</summary>
    public const string RowOrderUnknown = "row-order-unknown";

    /// <summary>One camera with two filter patterns.</summary>
    public const string ColourFilterDiffers = "colour-filter-differs";

    /// <summary>Frames of several cameras.</summary>
    public const string SeveralCameras = "several-cameras";

    /// <summary>Few frames of another size among many of one camera and binning.</summary>
    public const string FrameSizeDiffers = "frame-size-differs";

    /// <summary>The same file reached twice.</summary>
    public const string DuplicatePath = "duplicate-path";

    /// <summary>Two files with the same bytes: the copy is left out.</summary>
    public const string DuplicateContent = "duplicate-content";

    /// <summary>Two frames that claim to have begun in the same instant.</summary>
    public const string SameStartTime = "same-start-time";

    /// <summary>A file with several images, of which the first was taken.</summary>
    public const string SeveralImages = "several-images";

    /// <summary>Files that cannot be read.</summary>
    public const string FileUnreadable = "file-unreadable";

    /// <summary>A folder that cannot be opened.</summary>
    public const string FolderUnreadable = "folder-unreadable";

    /// <summary>A path that leads nowhere.</summary>
    public const string PathMissing = "path-missing";

    /// <summary>No frame that could be read and used was found.</summary>
    public const string NoFrames = "no-frames";

    /// <summary>The table is not separated by commas.</summary>
    public const string CaptureTableDelimiter = "capture-table-delimiter";

    /// <summary>The capture table has columns that are not known.</summary>
    public const string CaptureTableColumns = "capture-table-columns";

    /// <summary>The capture table is not UTF-8.</summary>
    public const string CaptureTableEncoding = "capture-table-encoding";

    /// <summary>The table writes decimal commas.</summary>
    public const string CaptureTableDecimalComma = "capture-table-decimal-comma";

    /// <summary>Rows that match no file.</summary>
    public const string CaptureTableNoFile = "capture-table-no-file";

    /// <summary>Rows whose bare name fits several files, or files that several rows fit.</summary>
    public const string CaptureTableAmbiguous = "capture-table-ambiguous";
}
