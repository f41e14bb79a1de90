namespace SensorProfile.Frames.Survey;

/// <summary>Distinguishes cameras of one model by their serial numbers.</summary>
internal static class SerialNumbers
{
    /// <summary>
    /// The frames; if one camera name covers several serial numbers, each name gets its number.
    /// </summary>
    public static IReadOnlyList<ReadFrame> TellApart(IReadOnlyList<ReadFrame> frames)
    {
        HashSet<string> shared =
        [
            .. frames
                .Where(f => f.Frame.Camera is not null && f.Header.SerialNumber is not null)
                .Select(f => (Camera: f.Frame.Camera!, f.Header.SerialNumber))
                .Distinct()
                .GroupBy(f => f.Camera)
                .Where(camera => camera.Count() > 1)
                .Select(camera => camera.Key),
        ];
        return shared.Count == 0
            ? frames
            : [.. frames.Select(f => shared.Contains(f.Frame.Camera ?? "") ? Named(f) : f)];
    }

    private static ReadFrame Named(ReadFrame frame) =>
        frame.Header.SerialNumber is { } serial
            ? frame with
            {
                Frame = frame.Frame with { Camera = $"{frame.Frame.Camera} no. {serial}" },
            }
            : frame;
}
