namespace SensorProfile.Profiles.Response;

/// <summary>The points behind gain, saturation and linearity.</summary>
public sealed record PhotonTransferProfile
{
    /// <summary>One entry per channel ("all" for monochrome).</summary>
    public IReadOnlyList<PhotonTransferCurve> Curves { get; init; } = [];
}
