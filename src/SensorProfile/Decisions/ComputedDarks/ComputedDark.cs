using SensorProfile.Fits;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>A computed master dark with its uncertainty, ADU, as it is written to a file.</summary>
public sealed class ComputedDark
{
    private readonly IReadOnlyList<FitsCard> cards;

    internal ComputedDark(int width, int height, float[] values, float[] uncertainty, IReadOnlyList<FitsCard> cards) =>
        (Width, Height, Values, Uncertainty, this.cards) = (width, height, values, uncertainty, cards);

    /// <summary>Width, px.</summary>
    public int Width { get; }

    /// <summary>Height, px.</summary>
    public int Height { get; }

    /// <summary>The dark, pedestal included, ADU, row after row.</summary>
    public ReadOnlyMemory<float> Values { get; }

    /// <summary>
    /// Standard uncertainty of every pixel, ADU; not a number where nothing was measured, or where left-out darks did
    /// not support any claim for its class.
    /// </summary>
    public ReadOnlyMemory<float> Uncertainty { get; }

    /// <summary>
    /// Writes a FITS file: the dark as primary image, so that any program reads it like any other master dark, followed
    /// by the image extension UNCERTAINTY.
    /// </summary>
    /// <param name="path">The file; its folder must exist. It gets its final name only when it is complete; an existing
    /// file of that name is replaced.</param>
    /// <exception cref="IOException">The disk is full or the folder cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public void Write(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        FitsWriter.Write(
            path,
            [
                new FitsImage<float>(Width, Height, Values, [FitsCard.Of("BUNIT", "adu"), .. cards]),
                new FitsImage<float>(
                    Width,
                    Height,
                    Uncertainty,
                    [
                        FitsCard.Of("BUNIT", "adu"),
                        FitsCard.Of("CONTENT", "Standard uncertainty of the computed dark, pixel by pixel"),
                    ],
                    "UNCERTAINTY"
                ),
            ],
            overwrite: true
        );
    }
}
