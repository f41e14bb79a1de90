namespace SensorProfile.Drift.HotPixelMatching;

/// <summary>One hot pixel that changed.</summary>
/// <param name="X">Column, from 1.</param>
/// <param name="Y">Row, from 1, first row of the file first.</param>
/// <param name="Change">What happened to it.</param>
/// <param name="From">Rate above the typical pixel then, e-/px/s.</param>
/// <param name="To">Rate above the typical pixel now, e-/px/s.</param>
/// <param name="Z">Difference over its uncertainty.</param>
internal sealed record HotPixelChange(int X, int Y, PixelChange Change, Measurement From, Measurement To, double Z);

/// <summary>What happened to a hot pixel.</summary>
internal enum PixelChange
{
    /// <summary>Hot in both sessions, or too near the threshold to tell.</summary>
    Kept,

    /// <summary>Hot now but not before.</summary>
    New,

    /// <summary>Hot before but not now.</summary>
    Healed,

    /// <summary>Hot in both, brighter now.</summary>
    Brighter,

    /// <summary>Hot in both, fainter now.</summary>
    Fainter,
}
