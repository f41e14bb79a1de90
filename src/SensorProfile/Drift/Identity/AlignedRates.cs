using SensorProfile.Drift.Archive;

namespace SensorProfile.Drift.Identity;

/// <summary>Dark rates of a differently oriented map, turned to the orientation of another.</summary>
/// <param name="inner">Rates as read.</param>
/// <param name="alignment">Where the map lies in the other one.</param>
internal sealed class AlignedRates(PixelRates inner, FrameAlignment alignment) : PixelRates
{
    /// <inheritdoc/>
    public override bool HoldsOrdinary => inner.HoldsOrdinary;

    /// <summary>
    /// Turns rates into the frame of another map; pixels that this one does not cover count as not measured.
    /// </summary>
    public static AlignedRates To(PixelRates wanted, PixelRates inner, FrameAlignment alignment) =>
        new(inner, alignment)
        {
            Width = wanted.Width,
            Height = wanted.Height,
            ReferenceTemperature = inner.ReferenceTemperature,
            TypicalRate = inner.TypicalRate,
        };

    /// <inheritdoc/>
    public override (double Rate, double Uncertainty) At(int index) =>
        Origin(index) is { } there ? inner.At(there) : (double.NaN, double.NaN);

    /// <inheritdoc/>
    public override IEnumerable<int> Above(double rate) =>
        inner
            .Above(rate)
            .Select(i => alignment.Moved(i % inner.Width, i / inner.Width))
            .Where(p => p.X >= 0 && p.X < Width && p.Y >= 0 && p.Y < Height)
            .Select(p => p.Y * Width + p.X)
            .Order();

    /// <inheritdoc/>
    public override double Doubling(int index) => Origin(index) is { } there ? inner.Doubling(there) : double.NaN;

    /// <inheritdoc/>
    public override bool Flickers(int index) => Origin(index) is { } there && inner.Flickers(there);

    /// <inheritdoc/>
    public override IEnumerable<int>? Ordinary() => inner.HoldsOrdinary ? EvenSample(Width * Height) : null;

    private int? Origin(int index)
    {
        (int x, int y) = alignment.Origin(index % Width, index / Width);
        return x >= 0 && x < inner.Width && y >= 0 && y < inner.Height ? y * inner.Width + x : null;
    }
}
