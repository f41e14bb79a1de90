namespace SensorProfile.Fits.Tiles;

/// <summary>A column of the table that holds the tiles.</summary>
/// <param name="Name">TTYPEn.</param>
/// <param name="Offset">First byte in the row.</param>
/// <param name="Letter">Type letter of TFORMn: P or Q for a descriptor, otherwise that of a number.</param>
/// <param name="ElementBytes">Bytes per element in the heap for a descriptor, otherwise bytes of the number.</param>
internal sealed record TileColumn(string Name, int Offset, char Letter, int ElementBytes)
{
    /// <summary>Whether the cell is a descriptor that points into the heap.</summary>
    public bool IsDescriptor => Letter is 'P' or 'Q';

    /// <summary>Bytes per element of a type; 0 for a type that does not occur here.</summary>
    public static int BytesOf(char letter) =>
        letter switch
        {
            'L' or 'A' or 'B' => 1,
            'I' => 2,
            'J' or 'E' => 4,
            'K' or 'D' or 'C' or 'P' => 8,
            'M' or 'Q' => 16,
            _ => 0,
        };
}
