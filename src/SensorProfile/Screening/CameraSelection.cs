using SensorProfile.Frames;
using static System.FormattableString;

namespace SensorProfile.Screening;

/// <summary>A profile covers one camera: the one with the most frames.</summary>
internal static class CameraSelection
{
    /// <summary>
    /// The frames of the most frequent camera and size (within each binning); the others are rejected by name.
    /// </summary>
    public static IReadOnlyList<Frame> Select(IReadOnlyList<Frame> frames, FindingsLog log)
    {
        if (frames.Count == 0)
            return frames;
        string? camera = MostFrequent(frames.Where(f => f.Camera is not null), f => f.Camera);
        var sizes = frames
            .Where(f => f.Camera is null || f.Camera == camera)
            .GroupBy(f => f.Settings.Binning)
            .ToDictionary(g => g.Key, g => MostFrequent(g, f => f.Place));
        bool Belongs(Frame f) => (f.Camera is null || f.Camera == camera) && sizes[f.Settings.Binning] == f.Place;
        log.LeaveOut(
            FindingCodes.FrameOfAnotherCamera,
            "Frames of another camera or size were left out: this profile is of "
                + Invariant(
                    $"{camera ?? "the camera with the most frames"}{Size(frames.FirstOrDefault(Belongs))}; measure "
                )
                + "the others on their own: each size of a camera that crops is a mode of its own, with bias frames, flats "
                + "and darks of that size.",
            frames
                .Where(f => !Belongs(f))
                .Select(f =>
                    (
                        f,
                        Invariant($"It is {f.Width} × {f.Height} px{(f.Camera is null ? "" : $" from {f.Camera}")}")
                            + $"{Elsewhere(f, frames.FirstOrDefault(Belongs))}, unlike most of the frames."
                    )
                )
        );
        return [.. frames.Where(Belongs)];
    }

    private static string Size(Frame? frame) =>
        frame is null ? "" : Invariant($" with {frame.Width} × {frame.Height} px");

    // same size, but read from another part of the sensor
    private static string Elsewhere(Frame frame, Frame? kept) =>
        kept is not null && (frame.Width, frame.Height) == (kept.Width, kept.Height) && frame.Place != kept.Place
            ? Invariant($" from row {frame.Place.Top} and column {frame.Place.Left} of the sensor on")
            : "";

    // ties go to the earliest frame, so that the result does not depend on chance
    private static TKey? MostFrequent<TKey>(IEnumerable<Frame> frames, Func<Frame, TKey> key) =>
        frames.GroupBy(key).OrderByDescending(g => g.Count()).Select(g => g.Key).FirstOrDefault();
}
