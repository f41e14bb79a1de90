using SensorProfile.Simulation.Parameters.Sensor;

namespace SensorProfile.Simulation.Sensors;

/// <summary>
/// An individual sensor: everything about its pixels that is the same in every frame. <see cref="SensorFactory"/>
/// builds it.
/// </summary>
internal sealed class Sensor
{
    /// <summary>The camera at its age.</summary>
    public required CameraDescription Camera { get; init; }

    /// <summary>The serial number from which the fixed pattern was drawn.</summary>
    public required ulong Serial { get; init; }

    /// <summary>Law of the ordinary pixels.</summary>
    public required DarkCurrentParameters Dark { get; init; }

    /// <summary>
    /// Rate of each pixel that follows the ordinary law (including bad columns and rows), at the reference temperature,
    /// e-/px/s; empty when there is none.
    /// </summary>
    public required float[] DarkRate { get; init; }

    /// <summary>Shape of each glow, 1 at its peak.</summary>
    public required float[][] GlowShapes { get; init; }

    /// <summary>Response to light relative to a good pixel at the centre, including vignetting and colour.</summary>
    public required float[] Response { get; init; }

    /// <summary>Bias level of each pixel, ADU; empty when all pixels have the camera's.</summary>
    public required float[] BiasLevel { get; init; }

    /// <summary>Read noise of each pixel, e-; empty when all pixels have the camera's.</summary>
    public required float[] ReadNoise { get; init; }

    /// <summary>Hot pixels, ordered by position.</summary>
    public required SparsePixels<HotPixel> Hot { get; init; }

    /// <summary>Telegraph pixels, ordered by position.</summary>
    public required SparsePixels<TelegraphPixel> Telegraph { get; init; }

    /// <summary>Dead pixels, ordered by position.</summary>
    public required IReadOnlyList<int> Dead { get; init; }

    /// <summary>Cold pixels, ordered by position.</summary>
    public required IReadOnlyList<int> Cold { get; init; }

    /// <summary>Groups of touching hot pixels, which are also in <see cref="Hot"/>.</summary>
    public required IReadOnlyList<int[]> Clusters { get; init; }

    /// <summary>Bad columns, then bad rows, each in order.</summary>
    public required IReadOnlyList<BadLine> BadLines { get; init; }

    /// <summary>Sum of <see cref="DarkRate"/>, e-/s.</summary>
    public required double DarkRateSum { get; init; }

    /// <summary>Sum of each glow shape.</summary>
    public required double[] GlowSums { get; init; }

    /// <summary>Largest stored value, ADU.</summary>
    public double TopLevel => ((1 << Camera.Bits) - 1) * (double)Camera.CodeStep;

    /// <summary>
    /// Charge at which the response bends by <see cref="CameraDescription.Nonlinearity"/>: the full well, or the
    /// converter's range, e-.
    /// </summary>
    public double FullScaleElectrons => Camera.FullWell ?? (TopLevel - Camera.BiasLevel) * Camera.Gain;
}
