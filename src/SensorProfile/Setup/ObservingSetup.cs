using SensorProfile.NoiseModel;

namespace SensorProfile.Setup;

/// <summary>
/// What an observer would otherwise repeat with every question: telescope, camera, sky, filters, stacks, cooling. All
/// of it is optional.
/// </summary>
internal sealed record ObservingSetup
{
    /// <summary>The telescope; null when not given.</summary>
    public TelescopeSetup? Telescope { get; init; }

    /// <summary>The camera; null when not given.</summary>
    public CameraSetup? Camera { get; init; }

    /// <summary>The sky: its brightness, its rate, or lights that show it; null when not given.</summary>
    public SkySetup? Sky { get; init; }

    /// <summary>The filters, the usual one first; empty without one.</summary>
    public IReadOnlyList<FilterSetup>? Filters { get; init; }

    /// <summary>The usual stack of lights; null when not given.</summary>
    public StackSetup? Stack { get; init; }

    /// <summary>How the sensor is cooled; null when not given.</summary>
    public CoolingSetup? Cooling { get; init; }

    /// <summary>Rise of the noise that is accepted, %; null for the program's own 5 %.</summary>
    public double? AcceptedLoss { get; init; }
}

/// <summary>A telescope.</summary>
internal sealed record TelescopeSetup
{
    /// <summary>Focal length over aperture.</summary>
    public double? FocalRatio { get; init; }

    /// <summary>Electrons per photon at the aperture: optics, filter and sensor together, above 0 and at most 1.</summary>
    public double? Efficiency { get; init; }
}

/// <summary>A camera.</summary>
internal sealed record CameraSetup
{
    /// <summary>Its <c>profile.json</c> or the folder that holds it; relative to the setup file's folder.</summary>
    public string? Profile { get; init; }

    /// <summary>Pixel size, µm.</summary>
    public double? PixelMicrometres { get; init; }
}

/// <summary>The sky, given in one of three ways.</summary>
internal sealed record SkySetup
{
    /// <summary>Brightness, mag/arcsec².</summary>
    public double? Brightness { get; init; }

    /// <summary>Background, e-/px/s.</summary>
    public double? Rate { get; init; }

    /// <summary>A folder of lights that the background is measured on; relative to the setup file's folder.</summary>
    public string? Lights { get; init; }
}

/// <summary>A filter.</summary>
internal sealed record FilterSetup
{
    /// <summary>What the observer calls it.</summary>
    public string? Name { get; init; }

    /// <summary>Width of its pass band, nm.</summary>
    public double? BandwidthNanometres { get; init; }

    /// <summary>Centre of its pass band, nm.</summary>
    public double? CentreNanometres { get; init; }
}

/// <summary>The usual stack of lights.</summary>
internal sealed record StackSetup
{
    /// <summary>Exposure of one light, s.</summary>
    public double? Exposure { get; init; }

    /// <summary>Lights in the stack.</summary>
    public int? Lights { get; init; }

    /// <summary>Dither positions among them; 1 without dithering.</summary>
    public int? DitherPositions { get; init; }

    /// <summary>How outliers are treated: none, sigma-clip, winsorised or median.</summary>
    public Rejection? Rejection { get; init; }

    /// <summary>
    /// Scale over which residuals of glow and level are smooth, px: they are judged against the noise averaged over it.
    /// </summary>
    public double? Smooth { get; init; }
}

/// <summary>How the sensor is cooled.</summary>
internal sealed record CoolingSetup
{
    /// <summary>How far below the air the cooler reaches, °C.</summary>
    public double? Reach { get; init; }

    /// <summary>
    /// A table of the year's nights: a date, a comma, the °C of the air; relative to the setup file's folder.
    /// </summary>
    public string? Nights { get; init; }

    /// <summary>True when there is no cooler: the sensor follows the air.</summary>
    public bool? Uncooled { get; init; }
}
