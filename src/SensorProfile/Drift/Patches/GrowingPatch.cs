namespace SensorProfile.Drift.Patches;

/// <summary>A place where new hot pixels stand closer together than chance allows.</summary>
/// <param name="X">Column of its centre, from 1.</param>
/// <param name="Y">Row of its centre, from 1.</param>
/// <param name="Radius">Radius that holds nine in ten of its new hot pixels, px.</param>
/// <param name="NewPixels">New hot pixels inside.</param>
/// <param name="Expected">New hot pixels that chance would put there.</param>
/// <param name="P">Probability of so dense a place anywhere on the sensor by chance.</param>
/// <param name="Where">In words: "near the lower left corner".</param>
/// <param name="Outline">Corners of the smallest convex outline around them, in order.</param>
internal sealed record GrowingPatch(
    double X,
    double Y,
    double Radius,
    int NewPixels,
    double Expected,
    double P,
    string Where,
    IReadOnlyList<OutlinePoint> Outline
);
