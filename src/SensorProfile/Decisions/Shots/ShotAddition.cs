using SensorProfile.Frames;

namespace SensorProfile.Decisions.Shots;

/// <summary>What adding frames to an existing session would bring.</summary>
/// <param name="What">The frames.</param>
/// <param name="Quantity">readNoise (of one pixel), gain, darkCurrent or doublingTemperature.</param>
/// <param name="Reduction">By how much its uncertainty shrinks, 0…1; 1 when it becomes measurable at all.</param>
/// <param name="Seconds">Clock time, s.</param>
internal sealed record ShotAddition(AddedFrames What, string Quantity, double Reduction, double Seconds)
{
    /// <summary>Standard uncertainty to expect from the session as it is; null when it cannot be measured.</summary>
    public double? Before { get; init; }

    /// <summary>Standard uncertainty to expect with the addition.</summary>
    public double? After { get; init; }

    /// <summary>Unit of both.</summary>
    public string Unit { get; init; } = "";
}

/// <summary>Frames to add.</summary>
/// <param name="Kind">Bias, dark or flat.</param>
/// <param name="Frames">How many.</param>
/// <param name="Longest">Longest exposure of the darks, s; null for the others.</param>
/// <param name="Exposures">Different exposures among them.</param>
/// <param name="Temperature">Temperature of the darks, °C; null for the others.</param>
internal sealed record AddedFrames(FrameKind Kind, int Frames, double? Longest, int Exposures, double? Temperature);
