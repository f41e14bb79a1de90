using SensorProfile.Characterisation;

namespace SensorProfile.Reporting.Maps;

/// <summary>One of the maps: its file, its unit, and what it says of itself.</summary>
internal sealed record MapKind(string File, string Unit, string Comment, bool AtReference, Func<ModeMaps, float[]?> Values)
{
    public static IReadOnlyList<MapKind> All { get; } =
    [
        new("dark-rate.fits", "e-/px/s", "Dark rate at the reference temperature, glow included", true, m => m.DarkRate),
        new("dark-rate-uncertainty.fits", "e-/px/s", "Standard uncertainty of the dark rate", true, m => m.DarkRateUncertainty),
        new("read-noise.fits", "e-", "Temporal standard deviation without light", false, m => m.ReadNoise),
        new("glow.fits", "e-/px/s", "Glow at the reference temperature", true, m => m.Glow),
        new("doubling.fits", "°C", "Temperature rise that doubles the dark rate", true, m => m.Doubling),
    ];

    /// <summary>The unit in the characters that a FITS header may hold.</summary>
    public string FitsUnit => Unit.Replace("°C", "deg_C", StringComparison.Ordinal);
}
