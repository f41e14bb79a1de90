namespace SensorProfile.Screening;

/// <summary>The cost of one stage of a characterisation.</summary>
/// <param name="Stage">Name of the stage.</param>
/// <param name="WallSeconds">Time from the start of the stage to its end, s.</param>
/// <param name="ProcessorSeconds">Processor time of the whole process in that time, all threads, s.</param>
/// <param name="BytesRead">Pixel data read from the frames, as stored: 2 bytes a sample.</param>
/// <param name="AllocatedBytes">Memory allocated, whether or not it was freed again, bytes.</param>
internal sealed record StageTime(
    string Stage,
    double WallSeconds,
    double ProcessorSeconds,
    long BytesRead,
    long AllocatedBytes
);
