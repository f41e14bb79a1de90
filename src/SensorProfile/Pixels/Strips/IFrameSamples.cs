namespace SensorProfile.Pixels.Strips;

/// <summary>The raw samples of one frame, row by row; safe to read from several threads at once.</summary>
internal interface IFrameSamples
{
    /// <summary>Name shown to the user.</summary>
    string Name { get; }

    /// <summary>Width, px.</summary>
    int Width { get; }

    /// <summary>Height, px.</summary>
    int Height { get; }

    /// <summary>Fills <paramref name="samples"/> with whole rows, the first of the file first.</summary>
    /// <param name="firstRow">0-based row of the first sample.</param>
    /// <param name="samples">A whole number of rows long.</param>
    void ReadRows(int firstRow, Span<ushort> samples);

    /// <summary>
    /// Says how the stored pixels contradict the sum that was stored with them, or null when they agree or no sum is
    /// there. Reads the whole frame.
    /// </summary>
    string? Damage() => null;

    /// <summary>Pixels under a mask beside those that see light; null when the file has none.</summary>
    MaskedArea? Masked => null;

    /// <summary>Reads all pixels of <see cref="Masked"/>, row after row.</summary>
    /// <param name="samples">Room for all of them.</param>
    /// <exception cref="NotSupportedException">The file has none.</exception>
    void ReadMasked(Span<ushort> samples) => throw new NotSupportedException($"{Name} has no masked pixels.");

    /// <summary>Pixels that have no value here or in another frame of the stack; null when all have one.</summary>
    MissingPixels? Missing => null;
}
