using SensorProfile.Frames;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.Screening;

/// <summary>A frame after its first reading, with what later steps need to know about it.</summary>
/// <param name="Frame">Frame as its header describes it.</param>
/// <param name="Samples">Its pixels.</param>
/// <param name="Channels">Statistics of each channel.</param>
/// <param name="RowMeans">Mean of each row, ADU.</param>
/// <param name="PixelSum">Sum of all samples, ADU.</param>
internal sealed record ScreenedFrame(
    Frame Frame,
    IFrameSamples Samples,
    IReadOnlyList<ChannelReading> Channels,
    double[] RowMeans,
    Int128 PixelSum
)
{
    /// <summary>Name shown to the user.</summary>
    public string Name => Frame.Name;

    /// <summary>Median level over the channels, ADU.</summary>
    public double Level => Channels.Average(c => c.Median);
}
