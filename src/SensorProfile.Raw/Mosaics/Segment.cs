using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>One strip or tile of the mosaic.</summary>
/// <param name="Index">Index in the file, from 0.</param>
/// <param name="IsTile">Whether it is a tile.</param>
/// <param name="Offset">Its first byte in the file.</param>
/// <param name="Bytes">Its length in the file, bytes.</param>
/// <param name="Width">Columns stored.</param>
/// <param name="Height">Rows of the mosaic in it; a tile at the bottom may store more.</param>
internal readonly record struct Segment(int Index, bool IsTile, long Offset, long Bytes, int Width, int Height)
{
    /// <summary>For example <c>strip 3</c>.</summary>
    public string Name => Invariant($"{(IsTile ? "tile" : "strip")} {Index}");
}
