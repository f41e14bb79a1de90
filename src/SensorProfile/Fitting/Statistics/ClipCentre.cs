namespace SensorProfile.Fitting.Statistics;

/// <summary>What a clip measures from.</summary>
internal enum ClipCentre
{
    Median,
    Mean,
}
