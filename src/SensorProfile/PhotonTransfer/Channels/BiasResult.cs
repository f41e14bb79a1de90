using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Response;
using SensorProfile.Screening;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Results from the bias frames.</summary>
internal sealed record BiasResult
{
    /// <summary>One entry per channel; empty without bias frames.</summary>
    public IReadOnlyList<BiasChannel> Channels { get; init; } = [];

    /// <summary>The sets of bias frames.</summary>
    public IReadOnlyList<ScreenedSet> Sets { get; init; } = [];

    /// <summary>Mean level over the channels, ADU.</summary>
    public Measurement? Level { get; init; }

    /// <summary>Read noise, root mean square over the channels, ADU.</summary>
    public Measurement? ReadNoiseAdu { get; init; }

    /// <summary>Temporal row and column noise as variances, ADU²; null without a pair.</summary>
    public StructuredNoise? Structure { get; init; }

    /// <summary>Frame-to-frame standard deviation of the level, ADU; null with fewer than 3 frames.</summary>
    public Measurement? Stability { get; init; }

    /// <summary>Per-pixel mean and variance over all bias frames; null with fewer than 2.</summary>
    public PixelMoments? Moments { get; init; }

    /// <summary>
    /// Percentiles and histogram of the temporal noise of single pixels; null before <see cref="NoiseSpread.Take"/>, and
    /// with too few frames.
    /// </summary>
    public NoiseDistribution? NoiseDistribution { get; init; }

    /// <summary>
    /// Temporal noise of every pixel, e-; null before <see cref="NoiseSpread.Take"/>, without gain, and with too few
    /// frames.
    /// </summary>
    public Half[]? ReadNoiseMap { get; init; }
}
