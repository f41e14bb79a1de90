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

    /// <summary>Fills <paramref name="samples"/> with whole rows, in file order.</summary>
    /// <param name="firstRow">0-based row of the first sample.</param>
    /// <param name="samples">Receives the rows; its length is a whole number of rows.</param>
    void ReadRows(int firstRow, Span<ushort> samples);

    /// <summary>
    /// Says how the stored pixels contradict the checksum stored with them; null when they agree or there is no
    /// checksum. Reads the whole frame.
    /// </summary>
    string? Damage() => null;

    /// <summary>Masked pixels next to the active area; null when the file has none.</summary>
    MaskedArea? Masked => null;

    /// <summary>Reads all pixels of <see cref="Masked"/>, row by row.</summary>
    /// <param name="samples">Room for all of them.</param>
    /// <exception cref="NotSupportedException">The file has none.</exception>
    void ReadMasked(Span<ushort> samples) => throw new NotSupportedException($"{Name} has no masked pixels.");

    /// <summary>Pixels that have no value here or in another frame of the stack; null when all have one.</summary>
    MissingPixels? Missing => null;
}
