namespace SensorProfile.Pixels.Strips;

/// <summary>The memory of maps of the whole sensor.</summary>
internal static class MapMemory
{
    private const int LargeSensor = 4_000_000; // pixels: below, its maps do not matter

    /// <summary>Gives the memory of maps that nothing uses any more back to the system, between two steps.</summary>
    /// <remarks>
    /// A map of 24 Mpixel holds 96 MB. Left to itself the collector waits until what is spent is a good part of what is
    /// in use, and keeps the freed memory for a while. Costs some tenths of a second; changes no result.
    /// </remarks>
    /// <param name="pixels">Pixels of the sensor.</param>
    public static void Release(long pixels)
    {
        if (pixels >= LargeSensor)
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
    }
}
