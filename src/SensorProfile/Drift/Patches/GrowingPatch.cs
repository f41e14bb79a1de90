namespace SensorProfile.Drift.Patches;

/// <summary>A place where new hot pixels lie closer together than chance allows.</summary>
/// <param name="X">Column of its centre, from 1.</param>
/// <param name="Y">Row of its centre, from 1.</param>
/// <param name="Radius">Radius that holds nine in ten of its new hot pixels, px.</param>
/// <param name="NewPixels">New hot pixels inside.</param>
/// <param name="Expected">New hot pixels expected there by chance.</param>
/// <param name="P">Probability that chance makes a place this dense anywhere on the sensor.</param>
/// <param name="Where">Position in words: "near the lower left corner".</param>
/// <param name="Outline">Vertices of the convex hull of those pixels, in order.</param>
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
