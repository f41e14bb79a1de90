namespace SensorProfile.Frames;

/// <summary>Darks of one night without a thermometer that were alike in warmth by their hot pixels.</summary>
/// <param name="Number">Number of the group, from 0, over all nights.</param>
/// <param name="AboveColdest">How much warmer than the coldest group of the night, °C.</param>
internal sealed record WarmthGroup(int Number, Measurement AboveColdest);
