namespace SensorProfile.NoiseModel.Sky;

/// <summary>
/// Three named skies: one is assumed when the user gives none, all three can be compared side by side.
/// </summary>
/// <remarks>
/// All from <see cref="SkyBrightness.Estimate"/> for f/5, 3.76 µm pixels and an efficiency of 0.5; exact, because they
/// are examples.
/// </remarks>
public static class NamedSkies
{
    /// <summary>21.5 mag/arcsec² through a 300 nm wide band at 550 nm: 0.71 e-/px/s.</summary>
    internal static SkyRate Dark { get; } = Named("dark sky, broad band", 21.5, 300, 550);

    /// <summary>19.5 mag/arcsec² through the same band: 4.5 e-/px/s.</summary>
    internal static SkyRate Suburban { get; } = Named("suburban sky, broad band", 19.5, 300, 550);

    /// <summary>19.5 mag/arcsec² through a 7 nm wide band at 656.3 nm: 0.088 e-/px/s.</summary>
    internal static SkyRate NarrowBand { get; } = Named("suburban sky, narrow band", 19.5, 7, 656.3);

    /// <summary>All three, in the order they are printed.</summary>
    public static IReadOnlyList<SkyRate> All { get; } = [Dark, Suburban, NarrowBand];

    /// <summary>The sky that every question assumes when none is given: suburban, broad band.</summary>
    public static SkyRate Default => Suburban;

    /// <summary>The sky to use: the given one, else <see cref="Default"/>.</summary>
    /// <param name="given">Null when the user gave no sky.</param>
    public static SkyRate OrDefault(SkyRate? given) => given ?? Default;

    private static SkyRate Named(string name, double magnitude, double bandwidth, double centre) =>
        new SkyBrightness
        {
            Magnitude = magnitude,
            FocalRatio = 5,
            PixelMicrometres = 3.76,
            BandwidthNanometres = bandwidth,
            CentreNanometres = centre,
            RelativeUncertainty = 0,
        }.Estimate(name);
}
