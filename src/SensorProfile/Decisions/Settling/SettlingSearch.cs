using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.Settling;

/// <summary>
/// Finds the frames whose addition would settle an answer that the uncertainty of the profile leaves open.
/// </summary>
/// <remarks>
/// Uncertainties from frames shrink as 1/√n. The answer is computed again with what would remain of them after q times
/// as many frames of a kind, the kinds that are quickest to take first; the smallest q that settles it is the advice.
/// What no frames reduce stays: the number of hot pixels of this sensor with its counting error, the class widths, the
/// law that was selected.
/// </remarks>
internal sealed class SettlingSearch
{
    private static readonly double[] factors = [1.5, 2, 3, 4, 6, 9, 16];

    // quickest first: bias frames, flats, lights (the sky), darks
    private static readonly FrameKind[][] kinds =
    [
        [FrameKind.Bias],
        [FrameKind.Flat],
        [FrameKind.Bias, FrameKind.Flat],
        [FrameKind.Light],
        [FrameKind.Dark],
        [FrameKind.Bias, FrameKind.Flat, FrameKind.Dark],
        [FrameKind.Bias, FrameKind.Flat, FrameKind.Dark, FrameKind.Light],
    ];

    /// <summary>Frames to add; empty when none settle it.</summary>
    internal IReadOnlyList<SettlingFrames> Frames { get; init; } = [];

    /// <summary>Which kind of frames, or why none.</summary>
    internal required SettlingOutcome Outcome { get; init; }

    /// <summary>At most this many times the frames of a kind are tried.</summary>
    internal static double MaxTimes => factors[^1];

    /// <summary>Searches for the smallest such addition.</summary>
    /// <param name="profile">The camera; its frames are those that would be multiplied.</param>
    /// <param name="reader">The mode.</param>
    /// <param name="sky">The sky.</param>
    /// <param name="told">Whether the answer can be given with this much uncertainty left.</param>
    internal static SettlingSearch Find(
        CameraProfile profile,
        SensorReader reader,
        SkyRate sky,
        Func<RemainingUncertainty, bool> told
    )
    {
        bool onlyTooMany = false;
        foreach (
            FrameKind[] added in kinds.Where(k => !k.Contains(FrameKind.Light) || sky.Rate.StandardUncertainty > 0)
        )
        {
            if (!told(Left(added, 0)))
                continue;
            foreach (double factor in factors)
                if (told(Left(added, 1 / Math.Sqrt(factor))))
                {
                    SettlingFrames[] frames = [.. added.SelectMany(kind => Again(profile, reader, kind, factor - 1))];
                    return new SettlingSearch { Frames = frames, Outcome = SettlingOutcome.MoreFrames };
                }
            onlyTooMany = true;
        }
        return new SettlingSearch
        {
            Outcome = onlyTooMany ? SettlingOutcome.TooManyFrames : SettlingOutcome.CountOfHotPixels,
        };
    }

    private static RemainingUncertainty Left(FrameKind[] added, double share)
    {
        double Of(FrameKind kind) => added.Contains(kind) ? share : 1;
        return new RemainingUncertainty(
            Of(FrameKind.Bias),
            Of(FrameKind.Flat),
            Of(FrameKind.Dark),
            Of(FrameKind.Light)
        );
    }

    /// <summary>The profile's frames of a kind, multiplied by <paramref name="again"/>.</summary>
    private static IEnumerable<SettlingFrames> Again(
        CameraProfile profile,
        SensorReader reader,
        FrameKind kind,
        double again
    )
    {
        if (kind == FrameKind.Dark)
            return Darks(reader, again);
        int mode = profile.Modes.TakeWhile(m => !m.Settings.Equals(reader.Mode.Settings)).Count();
        string word = EnumWord.Of(kind); // as profile.json writes it
        int there = profile.Frames.Session.Count(f => f.Kind == word && (f.Mode ?? mode) == mode);
        int least = kind switch
        {
            FrameKind.Bias => MissingMeasurements.BiasForPixelNoise,
            FrameKind.Flat => 2 * MissingMeasurements.FlatLevels,
            _ => 10,
        };
        int frames = (int)Math.Ceiling(again * Math.Max(there, least));
        return [SettlingFrames.Of(kind, null, null, kind == FrameKind.Flat ? frames + frames % 2 : frames)];
    }

    private static IEnumerable<SettlingFrames> Darks(SensorReader reader, double again) =>
        from point in reader.Mode.DarkCurrent!.Points
        from dark in point.Levels.Count > 0
            ? point.Levels.Select(l => (l.Exposure, l.Frames))
            : point.Exposures.Select(t => (t, SettlingFrames.EachDark))
        select SettlingFrames.Of(
            FrameKind.Dark,
            dark.Item1,
            Math.Round(point.Temperature, 1),
            (int)Math.Ceiling(again * Math.Max(dark.Item2, 1))
        );
}
