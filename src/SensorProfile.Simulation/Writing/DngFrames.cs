using SensorProfile.Raw;
using SensorProfile.Raw.Writing;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Writing;

/// <summary>What an ordinary camera would write to a DNG about a simulated frame.</summary>
internal static class DngFrames
{
    /// <summary>The frame and its facts; a fact is omitted when a fault omits its FITS keyword.</summary>
    /// <remarks>
    /// The black level is what the maker would state: the mean bias level in whole codes. A DNG cannot store the kind
    /// of a frame, a gain setting or an offset.
    /// </remarks>
    /// <param name="camera">The camera at its age.</param>
    /// <param name="frame">The frame.</param>
    /// <param name="sensor">Its samples, including the masked border.</param>
    public static DngFrame Of(CameraDescription camera, SimulatedFrame frame, ushort[] sensor)
    {
        HashSet<string> omitted = [.. frame.Faults.SelectMany(fault => fault.OmitKeywords)];
        MaskedBorder border = camera.MaskedBorder;
        bool hasBorder = border.Left > 0 || border.Top > 0;
        double most = ((1 << camera.Bits) - 1) * camera.CodeStep;
        return new DngFrame
        {
            Width = border.Left + camera.Width,
            Height = border.Top + camera.Height,
            Samples = sensor,
            ActiveArea = hasBorder
                ? new RawArea(border.Top, border.Left, border.Top + camera.Height, border.Left + camera.Width)
                : null,
            BitsPerSample = 16,
            ColourFilter = FilterOf(camera.ColourFilter),
            BlackLevel = new RawBlackLevel
            {
                PatternRows = 1,
                PatternColumns = 1,
                Pattern = [Math.Round(camera.BiasLevel)],
            },
            WhiteLevel = most,
            Facts = FactsOf(camera, frame, omitted),
        };
    }

    /// <summary>Layout and compression of the samples.</summary>
    public static DngForm FormOf(CameraDescription camera) =>
        camera.Files == FrameFiles.CompressedDng
            ? new DngForm { Compression = RawCompression.LosslessJpeg }
            : new DngForm();

    private const double FinestCelsius = 0.01; // resolution written for a probe without steps

    /// <summary>A camera takes bias frames at its shortest exposure; 0 s cannot be set.</summary>
    private const double ShortestSeconds = 1.0 / 8000;

    private static RawFacts FactsOf(CameraDescription camera, SimulatedFrame frame, HashSet<string> omitted)
    {
        double stepCelsius = camera.Thermometer.Resolution > 0 ? camera.Thermometer.Resolution : FinestCelsius;
        bool hasTemperature = frame.ReportedCelsius is not null && !omitted.Contains("CCD-TEMP");
        return new RawFacts
        {
            Camera = omitted.Contains("INSTRUME") ? null : camera.Name,
            ExposureSeconds = omitted.Contains("EXPTIME") ? null : Math.Max(frame.ExposureSeconds, ShortestSeconds),
            Iso = omitted.Contains("ISOSPEED") ? null : camera.Settings.Iso,
            Time = omitted.Contains("DATE-OBS") ? null : new RawTime(frame.StartUtc.UtcDateTime, TimeSpan.Zero),
            Temperature = hasTemperature
                ? new RawTemperature(frame.ReportedCelsius!.Value, stepCelsius, RawTemperaturePlace.Ambient, "")
                : null,
            Software = "SensorProfile simulation",
        };
    }

    private static RawColourFilter? FilterOf(string? letters)
    {
        if (letters is null)
            return null;
        RawColour[] colours = [.. letters.Select(ColourOf)];
        return new RawColourFilter(colours[0], colours[1], colours[2], colours[3]);
    }

    private static RawColour ColourOf(char letter) =>
        letter switch
        {
            'R' => RawColour.Red,
            'B' => RawColour.Blue,
            _ => RawColour.Green,
        };
}
