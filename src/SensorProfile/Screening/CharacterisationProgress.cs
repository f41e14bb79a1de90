namespace SensorProfile.Screening;

/// <summary>How far a characterisation has got.</summary>
/// <param name="Stage">The current step, in a few words.</param>
/// <param name="FramesDone">Frames read in this stage.</param>
/// <param name="FramesTotal">Frames that this stage reads.</param>
/// <param name="BytesRead">Pixel data read since the start, bytes.</param>
public sealed record CharacterisationProgress(string Stage, int FramesDone, int FramesTotal, long BytesRead);
