using SensorProfile.Drift.Identity;

namespace SensorProfile.Drift.MasterDarks;

/// <summary>A master and its fresh darks brought to a common frame.</summary>
/// <remarks>
/// The hot pixels of both reveal where the master lies: one of eight orientations, a shift of a few pixels, or the
/// offset of a crop. Where the sizes differ by a whole factor, the finer of the two is binned by that factor first.
/// Only the part covered by both is compared.
/// </remarks>
/// <param name="Master">The master, turned back and cut to the common part.</param>
/// <param name="Fresh">The fresh darks, cut to the same part.</param>
/// <param name="Bias">The fresh bias frames, cut likewise; null when there are none.</param>
/// <param name="Words">The master's orientation, in words; null when it matches the fresh darks.</param>
internal sealed record Realignment(MasterDark Master, FreshDarks Fresh, FreshDarks? Bias, string? Words)
{
    private const double HotSigmas = 12; // the same as for the hot pixels of a master

    // a library that retains fewer of its hot pixels is of another sensor, or of no use for this one
    private const double MinSurvivors = 0.25;
    private const int LargestBinning = 4;

    /// <summary>Where the common part lies in the fresh darks.</summary>
    public FramePart Part { get; private init; }

    /// <summary>Whether the master is cropped or binned relative to the fresh darks.</summary>
    public bool OtherSize { get; private init; }

    /// <summary>
    /// Evidence that the master is of another sensor than the fresh darks: too few hot pixels in common for ageing to
    /// explain; otherwise null.
    /// </summary>
    public CommonHotPixels? Foreign { get; private init; }

    /// <summary>
    /// Aligns the frames: unchanged when sizes agree and the hot pixels show nothing else, null when sizes differ and
    /// the hot pixels do not reveal the orientation.
    /// </summary>
    public static Realignment? Find(MasterDark master, FreshDarks fresh, FreshDarks? bias)
    {
        Realignment? best = null;
        AlignmentVotes? direct = null;
        int most = 0;
        foreach ((int ofMaster, int ofFresh) in Binnings(master, fresh))
        {
            MasterDark m = ofMaster == 1 ? master : Binned(master, ofMaster);
            FreshDarks f = ofFresh == 1 ? fresh : fresh.Binned(ofFresh);
            AlignmentVotes votes = HotPixelVotes.Find(Hot(m.Values, m.Width), Hot(f.Mean, f.Width));
            direct ??= votes;
            if (!votes.Found || votes.Votes <= most)
                continue;
            most = votes.Votes;
            best = Cut(m, f, ofFresh == 1 ? bias : bias?.Binned(ofFresh), votes.Alignment, ofMaster, ofFresh);
        }
        bool sameSize = master.Width == fresh.Width && master.Height == fresh.Height;
        if (best is not null)
            return best with { OtherSize = (long)master.Width * master.Height != (long)fresh.Width * fresh.Height };
        if (!sameSize)
            return null;
        return new Realignment(master, fresh, bias, null)
        {
            Part = new FramePart(0, 0, fresh.Width, fresh.Height, 1),
            Foreign =
                direct!.LargestShare < MinSurvivors
                    ? new CommonHotPixels(direct.Votes, direct.Pixels, direct.Expected)
                    : null,
        };
    }

    /// <summary>
    /// Binning factors to try, none first; others only where sizes differ, since binning changes the size.
    /// </summary>
    private static IEnumerable<(int Master, int Fresh)> Binnings(MasterDark master, FreshDarks fresh)
    {
        yield return (1, 1);
        (int longer, int shorter) = (Math.Max(master.Width, master.Height), Math.Min(master.Width, master.Height));
        (int freshLonger, int freshShorter) = (
            Math.Max(fresh.Width, fresh.Height),
            Math.Min(fresh.Width, fresh.Height)
        );
        for (int b = 2; b <= LargestBinning; b++)
        {
            if (freshLonger / b == longer && freshShorter / b == shorter)
                yield return (1, b);
            if (longer / b == freshLonger && shorter / b == freshShorter)
                yield return (b, 1);
        }
    }

    private static HotPixelSet Hot(float[] picture, int width) =>
        HotPixelSet.Find(
            picture,
            width,
            RobustSpread.Median(picture) + HotSigmas * Math.Max(RobustSpread.Measure(picture), 1e-12)
        );

    private static Realignment Cut(
        MasterDark master,
        FreshDarks fresh,
        FreshDarks? bias,
        FrameAlignment alignment,
        int ofMaster,
        int ofFresh
    )
    {
        var whole = new FramePart(0, 0, fresh.Width, fresh.Height, Math.Max(ofMaster, ofFresh));
        if (alignment.IsIdentity && master.Width == fresh.Width && master.Height == fresh.Height)
            return new Realignment(master, fresh, bias, HowItLies(alignment, master, fresh, ofMaster, ofFresh))
            {
                Part = whole,
            };
        int left = Math.Max(0, alignment.ShiftX),
            top = Math.Max(0, alignment.ShiftY),
            width = Math.Min(fresh.Width, alignment.ShiftX + alignment.TurnedWidth) - left,
            height = Math.Min(fresh.Height, alignment.ShiftY + alignment.TurnedHeight) - top;
        var values = new float[width * height];
        for (int y = 0; y < height; y++)
        for (int x = 0; x < width; x++)
        {
            (int column, int row) = alignment.Origin(left + x, top + y);
            values[y * width + x] = master.Values[row * master.Width + column];
        }
        return new Realignment(
            master with
            {
                Width = width,
                Height = height,
                Values = values,
            },
            fresh.Part(left, top, width, height),
            bias?.Part(left, top, width, height),
            HowItLies(alignment, master, fresh, ofMaster, ofFresh)
        )
        {
            Part = whole with { Left = left, Top = top },
        };
    }

    private static string? HowItLies(
        FrameAlignment alignment,
        MasterDark master,
        FreshDarks fresh,
        int ofMaster,
        int ofFresh
    )
    {
        List<string> parts = [];
        if (ofFresh > 1)
            parts.Add($"binned {ofFresh} × {ofFresh}");
        if (ofMaster > 1)
            parts.Add($"not binned {ofMaster} × {ofMaster} as the fresh darks are");
        bool smaller = alignment.TurnedWidth < fresh.Width || alignment.TurnedHeight < fresh.Height,
            larger = alignment.TurnedWidth > fresh.Width || alignment.TurnedHeight > fresh.Height;
        if (smaller || larger)
        {
            string turned = (alignment with { ShiftX = 0, ShiftY = 0 }).Words;
            if (turned.Length > 0)
                parts.Add(turned);
            parts.Add(
                smaller
                    ? $"cropped to {master.Width} × {master.Height} px, its first pixel at column "
                        + $"{alignment.ShiftX + 1}, row {alignment.ShiftY + 1} of the fresh darks"
                    : $"larger than the fresh darks, whose first pixel is its column {1 - alignment.ShiftX}, row {1 - alignment.ShiftY}"
            );
        }
        else if (!alignment.IsIdentity)
            parts.Add(alignment.Words);
        return parts.Count == 0 ? null : string.Join(", ", parts);
    }

    /// <summary>Means of b × b pixels; incomplete blocks at the right and lower edge are left out.</summary>
    private static MasterDark Binned(MasterDark master, int b) =>
        master with
        {
            Width = master.Width / b,
            Height = master.Height / b,
            Values = FreshDarks.Binned(master.Values, master.Width, b),
        };
}
