namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Combines the channels of a filter array into one number.</summary>
internal static class ChannelRms
{
    /// <summary>√(mean of the squares) over channels of equal size; null when one is missing.</summary>
    internal static Measurement? Combine(Measurement?[] values)
    {
        if (values.Length == 0 || values.Any(v => v is null))
            return null;
        double rms = Math.Sqrt(values.Average(v => v!.Value * v.Value));
        double uncertainty =
            rms > 0
                ? Math.Sqrt(values.Sum(v => Math.Pow(v!.Value * v.StandardUncertainty, 2))) / (values.Length * rms)
                : Math.Sqrt(values.Average(v => v!.StandardUncertainty * v.StandardUncertainty));
        return values[0]! with
        {
            Value = rms,
            StandardUncertainty = uncertainty,
            Samples = values.Sum(v => v!.Samples),
        };
    }
}
