using System.Text.Json;

namespace SensorProfile.Simulation.Truth;

/// <summary>
/// Every true value behind a simulated night: the content of <c>truth.json</c>. Values hold for the camera at its age.
/// </summary>
internal sealed record SimulationTruth
{
    /// <summary>Version of this format.</summary>
    public int SchemaVersion { get; init; } = 1;

    /// <summary>Seed of the night.</summary>
    public required ulong Seed { get; init; }

    /// <summary>The individual sensor.</summary>
    public required ulong Serial { get; init; }

    /// <summary>The camera as described, before ageing.</summary>
    public required CameraDescription Camera { get; init; }

    /// <summary>Conversion gain, e-/ADU, per stored code.</summary>
    public required double Gain { get; init; }

    /// <summary>Read noise of the typical pixel, e-, without quantisation.</summary>
    public required double ReadNoise { get; init; }

    /// <summary>Root mean square of the read noise over the pixels, e-: what pairs of frames measure.</summary>
    public required double ReadNoiseRms { get; init; }

    /// <summary><see cref="ReadNoiseRms"/> in ADU.</summary>
    public required double ReadNoiseAdu { get; init; }

    /// <summary>
    /// Mean bias level over the pixels, ADU, without the pedestal offsets of the frames and without telegraph pixels.
    /// </summary>
    public required double BiasLevel { get; init; }

    /// <summary>Charge at saturation, e-: the pixel's full well, or less when the converter saturates first.</summary>
    public required double FullWell { get; init; }

    /// <summary>Level at saturation, ADU.</summary>
    public required double SaturationLevel { get; init; }

    /// <summary>"pixel" when the well saturates first, "adc" when the converter does.</summary>
    public required string SaturatedBy { get; init; }

    /// <summary>log₂(full well/read noise rms), stops; null without read noise.</summary>
    public required double? DynamicRange { get; init; }

    /// <summary>Response nonuniformity from pixel to pixel, %.</summary>
    public required double ResponseNonuniformity { get; init; }

    /// <summary>
    /// Mean absolute relative deviation from the straight line between 5 % and 95 % of saturation, with light as
    /// abscissa, %.
    /// </summary>
    public required double LinearityError { get; init; }

    /// <summary>Coefficient a of variance = K·μ·(1 + aμ), 1/ADU.</summary>
    public required double BrighterFatterPerAdu { get; init; }

    /// <summary>Dark current; null when the camera has none.</summary>
    public required TrueDarkCurrent? DarkCurrent { get; init; }

    /// <summary>Hot pixels.</summary>
    public required IReadOnlyList<TrueHotPixel> HotPixels { get; init; }

    /// <summary>Random telegraph pixels.</summary>
    public required IReadOnlyList<TrueTelegraphPixel> TelegraphPixels { get; init; }

    /// <summary>Dead pixels.</summary>
    public required IReadOnlyList<TruePlace> DeadPixels { get; init; }

    /// <summary>Cold pixels.</summary>
    public IReadOnlyList<TruePlace> ColdPixels { get; init; } = [];

    /// <summary>Groups of touching hot pixels.</summary>
    public IReadOnlyList<TrueCluster> HotClusters { get; init; } = [];

    /// <summary>Bad rows: their first bad pixel; they run to the last column.</summary>
    public IReadOnlyList<TruePlace> BadRows { get; init; } = [];

    /// <summary>Bad columns: their first bad pixel; they run to the last row.</summary>
    public required IReadOnlyList<TruePlace> BadColumns { get; init; }

    /// <summary>Glow.</summary>
    public required IReadOnlyList<TrueGlow> Glow { get; init; }

    /// <summary>Paths of the maps, relative to the folder of <c>truth.json</c>.</summary>
    public TrueMapFiles Maps { get; init; } = new();

    /// <summary>The frames in the order taken.</summary>
    public required IReadOnlyList<TrueFrame> Frames { get; init; }

    /// <summary>The truth of a night in memory; its maps are not on disk.</summary>
    /// <param name="night">The night.</param>
    /// <param name="filePrefix">Prefix of every frame's file name.</param>
    internal static SimulationTruth Of(SimulatedNight night, string filePrefix = "")
    {
        ArgumentNullException.ThrowIfNull(night);
        return TruthBuilder.Build(night, filePrefix);
    }

    /// <summary>Reads a <c>truth.json</c>.</summary>
    /// <exception cref="InvalidDataException">The file is not one; the message names file and place.</exception>
    public static SimulationTruth Read(string path)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            return JsonSerializer.Deserialize(stream, SimulationJson.Default.SimulationTruth)
                ?? throw new JsonException("found null.");
        }
        catch (JsonException error)
        {
            throw new InvalidDataException(
                $"{path} is not the truth of a simulated night: {error.Message} Simulate the night again.",
                error
            );
        }
    }
}
