namespace SensorProfile.Pixels.Strips;

/// <summary>Memory of maps of the whole sensor.</summary>
internal static class MapMemory
{
    private const int LargeSensor = 4_000_000; // pixels; below this, maps are small enough to ignore

    /// <summary>Returns the memory of unused maps to the system, between two steps.</summary>
    /// <remarks>
    /// A map of 24 Mpixel takes 96 MB. Left to itself, the garbage collector waits until garbage is a good part of the
    /// memory in use, and keeps the freed memory for a while. Costs a few tenths of a second; changes no result.
    /// </remarks>
    /// <param name="pixels">Pixels of the sensor.</param>
    public static void Release(long pixels)
    {
        if (pixels >= LargeSensor)
            GC.Collect(GC.MaxGeneration, GCCollectionMode.Aggressive, blocking: true, compacting: true);
    }
}
