using SensorProfile.Pixels.Pairs;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>A flat pair and what was measured on it.</summary>
/// <param name="A">First frame.</param>
/// <param name="B">Second frame.</param>
/// <param name="ExposureSeconds">Exposure, s; null when unknown.</param>
/// <param name="Channels">One entry per channel.</param>
/// <param name="Flickers">Whether the light changed from row to row, so that the rows were scaled one by one.</param>
internal sealed record MeasuredPair(
    ScreenedFrame A,
    ScreenedFrame B,
    double? ExposureSeconds,
    IReadOnlyList<ScaledPairChannel> Channels,
    bool Flickers
)
{
    /// <summary>Relative change of the light from the first to the second frame.</summary>
    public double Drift => Math.Abs(Channels.Average(c => c.MeanB / c.MeanA) - 1);
}
