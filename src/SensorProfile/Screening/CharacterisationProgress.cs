namespace SensorProfile.Screening;

/// <summary>How far a characterisation has come.</summary>
/// <param name="Stage">What is being done, in a few words.</param>
/// <param name="FramesDone">Frames read in this stage.</param>
/// <param name="FramesTotal">Frames that this stage reads.</param>
/// <param name="BytesRead">Pixel data read since the start, bytes.</param>
public sealed record CharacterisationProgress(string Stage, int FramesDone, int FramesTotal, long BytesRead);
