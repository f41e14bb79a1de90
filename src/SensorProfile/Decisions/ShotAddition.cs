namespace SensorProfile.Decisions;

/// <summary>What adding frames to an existing session would bring.</summary>
/// <param name="What">The frames, in words.</param>
/// <param name="Quantity">readNoise, gain, darkCurrent or doublingTemperature.</param>
/// <param name="Reduction">By how much its uncertainty shrinks, 0…1; 1 when it becomes measurable at all.</param>
/// <param name="Seconds">Clock time, s.</param>
public sealed record ShotAddition(string What, string Quantity, double Reduction, double Seconds);
