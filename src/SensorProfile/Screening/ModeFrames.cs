using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Screening;

/// <summary>The frames of one mode, looked at once and sifted.</summary>
internal sealed record ModeFrames
{
    /// <summary>Settings they share.</summary>
    public required ModeSettings Settings { get; init; }

    /// <summary>Which pixels share a channel.</summary>
    public required ColourMosaic Mosaic { get; init; }

    /// <summary>ADU between two usable codes.</summary>
    public required CodeStep CodeStep { get; init; }

    /// <summary>Sets with their good frames, in order of time.</summary>
    public required IReadOnlyList<ScreenedSet> Sets { get; init; }

    /// <summary>Histogram of every channel over the flats; empty without flats.</summary>
    public required IReadOnlyList<IntegerHistogram> FlatCodes { get; init; }

    /// <summary>Good frames.</summary>
    public IEnumerable<ScreenedFrame> Frames => Sets.SelectMany(s => s.Frames);

    /// <summary>Pixel data of one frame, bytes.</summary>
    public long BytesPerFrame => Sets.Count > 0 ? 2L * Sets[0].Set.Width * Sets[0].Set.Height : 0;

    /// <summary>Sets of one kind.</summary>
    public IReadOnlyList<ScreenedSet> Of(FrameKind kind) =>
        [.. Sets.Where(s => s.Set.Kind == kind && s.Frames.Count > 0)];
}
