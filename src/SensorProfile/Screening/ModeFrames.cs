using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Screening;

/// <summary>The screened frames of one mode.</summary>
internal sealed record ModeFrames
{
    /// <summary>Settings that the frames share.</summary>
    public required ModeSettings Settings { get; init; }

    /// <summary>Which pixels share a channel.</summary>
    public required ColourMosaic Mosaic { get; init; }

    /// <summary>ADU between usable codes.</summary>
    public required CodeStep CodeStep { get; init; }

    /// <summary>Sets with their good frames, ordered by time.</summary>
    public required IReadOnlyList<ScreenedSet> Sets { get; init; }

    /// <summary>Histogram of every channel over the flats; empty without flats.</summary>
    public required IReadOnlyList<IntegerHistogram> FlatCodes { get; init; }

    /// <summary>All good frames.</summary>
    public IEnumerable<ScreenedFrame> Frames => Sets.SelectMany(s => s.Frames);

    /// <summary>Pixel data of one frame, bytes.</summary>
    public long BytesPerFrame => Sets.Count > 0 ? 2L * Sets[0].Set.Width * Sets[0].Set.Height : 0;

    /// <summary>The sets of one kind.</summary>
    public IReadOnlyList<ScreenedSet> SetsOf(FrameKind kind) =>
        [.. Sets.Where(s => s.Set.Kind == kind && s.Frames.Count > 0)];
}
