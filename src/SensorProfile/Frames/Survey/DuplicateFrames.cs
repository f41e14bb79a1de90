using SensorProfile.Profiles.Session;

namespace SensorProfile.Frames.Survey;

/// <summary>Finds copies of a frame: pooled with its original, a copy would halve the measured noise.</summary>
internal static class DuplicateFrames
{
    /// <summary>
    /// The frames without copies; the copies; findings. Files are compared byte by byte only where their headers agree
    /// completely.
    /// </summary>
    public static (
        IReadOnlyList<ReadFrame> Kept,
        IReadOnlyList<RejectedFile> Copies,
        IReadOnlyList<Finding> Findings
    ) Remove(IReadOnlyList<ReadFrame> frames, CancellationToken ct)
    {
        HashSet<ReadFrame> copies = new(ReferenceEqualityComparer.Instance);
        List<RejectedFile> rejected = [];
        List<string> sameInstant = [];
        foreach (List<ReadFrame> suspects in Suspects(frames))
        {
            List<ReadFrame> originals = [];
            foreach (ReadFrame frame in suspects)
            {
                ct.ThrowIfCancellationRequested();
                if (originals.Find(o => SameContent(o.Frame, frame.Frame)) is { } original)
                {
                    copies.Add(frame);
                    rejected.Add(
                        new RejectedFile(frame.Frame.Name, $"It is a copy of {original.Frame.Name}, byte for byte.")
                    );
                }
                else
                    originals.Add(frame);
            }
            if (originals.Count > 1 && originals.Exists(HasFraction))
                sameInstant.AddRange(originals.Select(o => o.Frame.Name));
        }
        return ([.. frames.Where(f => !copies.Contains(f))], rejected, [.. Tell(rejected, sameInstant)]);
    }

    private static IEnumerable<Finding> Tell(List<RejectedFile> copies, List<string> sameInstant)
    {
        if (copies.Count > 0)
            yield return new Finding(
                FindingCodes.DuplicateContent,
                Severity.Warning,
                $"{Counted.Files(copies.Count)} left out as copies of others, byte for byte: a frame counted "
                    + "twice makes the noise look smaller than it is.",
                [.. copies.Select(c => c.File)]
            );
        if (sameInstant.Count > 0)
            yield return new Finding(
                FindingCodes.SameStartTime,
                Severity.Warning,
                $"{Counted.Frames(sameInstant.Count)} of one camera begin in the same instant as another "
                    + "although the files differ: one may be a processed or cropped copy of the other; leave it out "
                    + "with column use of the capture table if so.",
                sameInstant
            );
    }

    private static IEnumerable<List<ReadFrame>> Suspects(IReadOnlyList<ReadFrame> frames) =>
        frames
            .Where(f => f.Frame.StartUtc is not null)
            .GroupBy(f => (f.Frame.Camera, f.Frame.StartUtc, f.Header.ExposureSeconds))
            .Select(group => group.ToList())
            .Where(group => group.Count > 1);

    /// <summary>Stamps in whole seconds coincide by chance in a quick series; stamps with a fraction do not.</summary>
    private static bool HasFraction(ReadFrame frame) =>
        frame.Frame.StartUtc!.Value.Ticks % TimeSpan.TicksPerSecond != 0;

    private static bool SameContent(Frame a, Frame b)
    {
        if (a.FileBytes != b.FileBytes)
            return false;
        try
        {
            using FileStream first = File.OpenRead(a.Path),
                second = File.OpenRead(b.Path);
            byte[] one = new byte[1 << 16],
                other = new byte[1 << 16];
            while (true)
            {
                int count = first.ReadAtLeast(one, one.Length, throwOnEndOfStream: false);
                if (
                    second.ReadAtLeast(other, other.Length, throwOnEndOfStream: false) != count
                    || !one.AsSpan(0, count).SequenceEqual(other.AsSpan(0, count))
                )
                    return false;
                if (count == 0)
                    return true;
            }
        }
        catch (IOException) // gone or unreadable by now: reading its pixels will report it
        {
            return false;
        }
    }
}
