using SensorProfile.Frames;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>The camera as its frames show it.</summary>
internal static class CameraSummary
{
    public static CameraInfo Summarise(IReadOnlyList<Frame> frames, IReadOnlyList<MeasuredMode> modes)
    {
        if (frames.Count == 0)
            return new();
        // The unbinned sensor, or the least binned one there is.
        Frame widest = frames.MaxBy(f => (long)f.Width * f.Height)!;
        int highest = modes
            .SelectMany(m => m.Frames.Frames)
            .SelectMany(f => f.Channels)
            .Select(c => c.Maximum)
            .DefaultIfEmpty(0)
            .Max();
        bool converterSeen = modes
            .SelectMany(m => m.Profile.PhotonTransfer?.Curves ?? [])
            .Any(c => c.SaturatedBy == SaturationCause.Adc);
        return new CameraInfo
        {
            Name = frames.Select(f => f.Camera).FirstOrDefault(c => c is not null) ?? "unnamed camera",
            Width = widest.Width,
            Height = widest.Height,
            ColourFilter = frames.Select(f => f.ColourFilter).FirstOrDefault(c => c is not null),
            StoredBits = converterSeen ? BitsFor(highest) : 16,
            CodeStep = modes.Select(m => m.Frames.CodeStep.Step).DefaultIfEmpty(1).Min(),
        };
    }

    private static int BitsFor(int code) => 32 - System.Numerics.BitOperations.LeadingZeroCount((uint)code);
}
