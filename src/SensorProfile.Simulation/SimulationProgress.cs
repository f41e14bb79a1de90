namespace SensorProfile.Simulation;

/// <summary>How far writing a night has come.</summary>
/// <param name="FramesWritten">Frames on the disk.</param>
/// <param name="Frames">Frames of the night.</param>
/// <param name="File">The last one.</param>
public readonly record struct SimulationProgress(int FramesWritten, int Frames, string File);
