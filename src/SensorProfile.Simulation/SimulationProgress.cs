namespace SensorProfile.Simulation;

/// <summary>Progress of writing a night.</summary>
/// <param name="FramesWritten">Frames written so far.</param>
/// <param name="Frames">Frames of the night.</param>
/// <param name="File">The latest file.</param>
public readonly record struct SimulationProgress(int FramesWritten, int Frames, string File);
