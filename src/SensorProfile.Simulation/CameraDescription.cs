using System.Text.Json.Serialization;
using SensorProfile.Simulation.Parameters;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation;

/// <summary>
/// A synthetic camera and the frames taken with it: the content of <c>camera.json</c>. Every optional effect is off by
/// default unless stated.
/// </summary>
/// <remarks>
/// Signal chain of one pixel: electrons from light, dark current and glow (Poisson) → brighter-fatter reduction of
/// their spread → full well → bend of the response → read, row and column noise (e-) → division by the gain, plus bias
/// level → rounding to converter codes.
/// </remarks>
public sealed partial record CameraDescription
{
    /// <summary>Name, written to INSTRUME. Default "Synthetic".</summary>
    public string Name { get; init; } = "Synthetic";

    /// <summary>
    /// The individual sensor: its fixed pattern is drawn from this number. Null (default): drawn from the seed of the
    /// run, so that another seed gives another sensor.
    /// </summary>
    public ulong? Serial { get; init; }

    /// <summary>Age of the sensor, years; see <see cref="Ageing"/>. Default 0.</summary>
    public double AgeYears { get; init; }

    /// <summary>Start of the night for a sensor of age 0, UTC; an aged one is taken that many years later.</summary>
    public DateTimeOffset Start { get; init; } = new(2031, 10, 14, 19, 0, 0, TimeSpan.Zero);

    /// <summary>Frame width, px.</summary>
    public required int Width { get; init; }

    /// <summary>Frame height, px.</summary>
    public required int Height { get; init; }

    /// <summary>
    /// Colour filter array of the first two rows of the file, "RGGB" and its rotations; null (default) for monochrome.
    /// </summary>
    public string? ColourFilter { get; init; }

    /// <summary>Transmission of each colour.</summary>
    public ColourResponse ColourResponse { get; init; } = new();

    /// <summary>File format of the frames: "fits" (default), "dng" or "compressed-dng".</summary>
    [JsonConverter(typeof(KebabEnumConverter<FrameFiles>))]
    public FrameFiles Files { get; init; }

    /// <summary>Masked pixels beside the exposed ones; only a DNG can store them.</summary>
    public MaskedBorder MaskedBorder { get; init; } = new();

    /// <summary>Bits of the converter, 8…16: codes run from 0 to 2^bits − 1. Default 16.</summary>
    public int Bits { get; init; } = 16;

    /// <summary>
    /// Factor between converter codes and stored values (4 for 14 bits shifted left to 16). Default 1.
    /// </summary>
    public int CodeStep { get; init; } = 1;

    /// <summary>Conversion gain, e-/ADU, per stored code. Default 1.</summary>
    public double Gain { get; init; } = 1;

    /// <summary>Read noise of the typical pixel, e- (rms, quantisation not included). Default 0.</summary>
    public double ReadNoise { get; init; }

    /// <summary>Spread of ln(read noise) over the pixels. Default 0.</summary>
    public double ReadNoiseSpread { get; init; }

    /// <summary>Mean level of a bias frame, ADU. Default 500.</summary>
    public double BiasLevel { get; init; } = 500;

    /// <summary>Fixed pattern of the bias level.</summary>
    public BiasPattern BiasPattern { get; init; } = new();

    /// <summary>Changes of the bias level.</summary>
    public Pedestal Pedestal { get; init; } = new();

    /// <summary>Full well, e-; null (default) when it lies beyond the converter's range.</summary>
    public double? FullWell { get; init; }

    /// <summary>Dark current of the typical ordinary pixel; null (default) for none.</summary>
    public DarkCurrentParameters? DarkCurrent { get; init; }

    /// <summary>
    /// Spread of ln(dark rate) over the ordinary pixels (log-normal; the median pixel keeps the typical rate). Default
    /// 0.
    /// </summary>
    public double DarkNonuniformity { get; init; }

    /// <summary>Hot pixels.</summary>
    public HotPixels HotPixels { get; init; } = new();

    /// <summary>Random telegraph pixels.</summary>
    public TelegraphPixels TelegraphPixels { get; init; } = new();

    /// <summary>Pixels that hardly respond to light.</summary>
    public DeadPixels DeadPixels { get; init; } = new();

    /// <summary>Pixels with a dark current far below their neighbours'.</summary>
    public ColdPixels ColdPixels { get; init; } = new();

    /// <summary>Groups of touching hot pixels.</summary>
    public HotClusters HotClusters { get; init; } = new();

    /// <summary>Columns that differ from the rest.</summary>
    public BadLines BadColumns { get; init; } = new();

    /// <summary>Rows that differ from the rest.</summary>
    public BadLines BadRows { get; init; } = new();

    /// <summary>
    /// Parts of the sensor with amplifiers of their own; where they overlap, levels add up and factors multiply.
    /// </summary>
    public IReadOnlyList<Tap> Taps { get; init; } = [];

    /// <summary>Places where the electronics glow.</summary>
    public IReadOnlyList<Glow> Glow { get; init; } = [];

    /// <summary>Further physics of the sensor; null (default) for none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SensorPhysics? Physics { get; init; }

    /// <summary>Noise common to a row, new in each frame, e- (rms). Default 0.</summary>
    public double RowNoise { get; init; }

    /// <summary>Noise common to a column, new in each frame, e- (rms). Default 0.</summary>
    public double ColumnNoise { get; init; }

    /// <summary>
    /// True when the camera subtracts the mean dark signal of each frame, so that the level does not show it. Default
    /// false.
    /// </summary>
    public bool ClampBlack { get; init; }

    /// <summary>
    /// Bend of the response: the signal of N electrons is N·(1 − nonlinearity·N/full well); 0.01 = 1 % too low at full
    /// well. Default 0.
    /// </summary>
    public double Nonlinearity { get; init; }

    /// <summary>
    /// Brighter-fatter coefficient a, 1/e-: the variance of N electrons is N·(1 + a·N); negative on real sensors.
    /// Default 0.
    /// </summary>
    public double BrighterFatter { get; init; }

    /// <summary>
    /// Response nonuniformity from pixel to pixel (relative standard deviation; 0.01 = 1 %). Default 0.
    /// </summary>
    public double ResponseNonuniformity { get; init; }

    /// <summary>
    /// Loss of light in the corners of flats and lights (0.3 = 30 %), growing with the square of the distance from the
    /// centre. Default 0.
    /// </summary>
    public double Vignetting { get; init; }

    /// <summary>Steadiness of the light of the flats.</summary>
    public Lamp Lamp { get; init; } = new();

    /// <summary>True (default) when a cooler holds the temperature; an uncooled camera writes no SET-TEMP.</summary>
    public bool Cooled { get; init; } = true;

    /// <summary>Temperature probe and stability of the cooling.</summary>
    public Thermometer Thermometer { get; init; } = new();

    /// <summary>In-camera processing of the codes before they are stored.</summary>
    public InCamera InCamera { get; init; } = new();

    /// <summary>Charged particles.</summary>
    public CosmicRays CosmicRays { get; init; } = new();

    /// <summary>Frames without exposure from some row on.</summary>
    public TornFrames TornFrames { get; init; } = new();

    /// <summary>The first frame of each shot.</summary>
    public FirstFrame FirstFrame { get; init; } = new();

    /// <summary>Stars on the light frames.</summary>
    public Stars Stars { get; init; } = new();

    /// <summary>How the sensor ages.</summary>
    public Ageing Ageing { get; init; } = new();

    /// <summary>Settings written to the headers.</summary>
    public HeaderSettings Settings { get; init; } = new();

    /// <summary>The shots, in the order taken.</summary>
    public IReadOnlyList<Shot> Shots { get; init; } = [];

    /// <summary>Faults of chosen frames.</summary>
    public IReadOnlyList<Fault> Faults { get; init; } = [];

    /// <summary>
    /// The same camera some years later, taking the same shots: the same individual sensor, aged according to
    /// <see cref="Ageing"/>.
    /// </summary>
    /// <param name="years">Years added to its age; 0 or more.</param>
    /// <exception cref="InvalidOperationException"><see cref="Serial"/> is null, so that it is not known which
    /// individual ages.</exception>
    internal CameraDescription Age(double years)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(years);
        return Serial is null
            ? throw new InvalidOperationException(
                "A camera without a serial number is another individual in every run; give it a serial number "
                    + "before it ages."
            )
            : this with
            {
                AgeYears = AgeYears + years,
            };
    }
}
