namespace SensorProfile.Screening;

/// <summary>What one stage of a characterisation cost.</summary>
/// <param name="Stage">What was done.</param>
/// <param name="WallSeconds">From its beginning to that of the next, s.</param>
/// <param name="ProcessorSeconds">Processor time of the whole process meanwhile, all threads, s.</param>
/// <param name="BytesRead">Pixel data read from the frames, as stored: 2 bytes a sample.</param>
/// <param name="AllocatedBytes">Memory taken from the collector, whether or not it was given back.</param>
public sealed record StageTime(
    string Stage,
    double WallSeconds,
    double ProcessorSeconds,
    long BytesRead,
    long AllocatedBytes
);
