using SensorProfile.Drift.Archive;

namespace SensorProfile.Drift.Identity;

/// <summary>Positions of the brightest hot pixels of a frame or map: enough to recognise a sensor.</summary>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px.</param>
/// <param name="Places">Column and row from 0, brightest first.</param>
internal sealed record HotPixelSet(int Width, int Height, IReadOnlyList<(int X, int Y)> Places)
{
    /// <summary>More would only cost time: the number of votes for an alignment grows with the square.</summary>
    public const int MaxPixels = 1000;

    private const double OwnErrors = 6; // a pixel hot by noise alone is not hot in another session

    /// <summary>Takes the brightest pixels of a dark-rate map or list that do not flicker.</summary>
    /// <param name="rates">Map or list.</param>
    /// <param name="hotExcess">Excess over the typical pixel from which a pixel is hot, e-/px/s.</param>
    public static HotPixelSet Find(PixelRates rates, double hotExcess) =>
        new(
            rates.Width,
            rates.Height,
            [
                .. rates
                    .Above(rates.TypicalRate + hotExcess)
                    .Where(i => !rates.Flickers(i))
                    .Select(i => (Index: i, rates.At(i).Rate, rates.At(i).Uncertainty))
                    .Where(p => p.Rate - rates.TypicalRate > OwnErrors * p.Uncertainty)
                    .OrderByDescending(p => p.Rate)
                    .ThenBy(p => p.Index)
                    .Take(MaxPixels)
                    .Select(p => (p.Index % rates.Width, p.Index / rates.Width)),
            ]
        );

    /// <summary>Takes the brightest pixels of an image above a limit.</summary>
    public static HotPixelSet Find(float[] picture, int width, double limit)
    {
        List<(float Value, int Index)> hot = [];
        for (int i = 0; i < picture.Length; i++)
            if (picture[i] > limit && float.IsFinite(picture[i]))
                hot.Add((picture[i], i));
        return new HotPixelSet(
            width,
            picture.Length / width,
            [
                .. hot.OrderByDescending(p => p.Value)
                    .ThenBy(p => p.Index)
                    .Take(MaxPixels)
                    .Select(p => (p.Index % width, p.Index / width)),
            ]
        );
    }
}
