using MathNet.Numerics;

namespace SensorProfile.Drift.Identity;

/// <summary>Finds where one frame lies in another of the same sensor, from the positions of their hot pixels.</summary>
/// <remarks>
/// Every pair of one hot pixel here and one there votes for the shift that brings them together, in each of the eight
/// orientations. Hot pixels of another sensor coincide only by chance: their votes are Poisson, with a mean estimated
/// from neighbouring shifts, which also captures the crowding of both sets (glow, rows, a cluster). An alignment is
/// found when chance would give the best shift so many votes, over all shifts tried, in less than <see cref="Chance"/>
/// of comparisons.
/// </remarks>
internal static class HotPixelVotes
{
    /// <summary>Probability of finding an alignment where there is none, over all trials of a comparison.</summary>
    public const double Chance = 1e-3;

    /// <summary>Largest shift tried between frames of the same size, px.</summary>
    public const int FarthestShift = 4;

    // extra shifts around those tried, which show what chance gives
    private const int Margin = 8;

    private static readonly FrameOrientation[] Orientations = Enum.GetValues<FrameOrientation>();

    /// <summary>The best alignment of the moved frame in the fixed one.</summary>
    public static AlignmentVotes Find(HotPixelSet moved, HotPixelSet @fixed)
    {
        AlignmentVotes? best = null,
            plain = null;
        long trials = 0;
        foreach (FrameOrientation orientation in Orientations)
        {
            var frame = new FrameAlignment(orientation, moved.Width, moved.Height, 0, 0);
            (int fromX, int toX) = Shifts(@fixed.Width - frame.TurnedWidth);
            (int fromY, int toY) = Shifts(@fixed.Height - frame.TurnedHeight);
            // a frame larger in one direction and smaller in the other is not a crop of the other
            if ((long)(@fixed.Width - frame.TurnedWidth) * (@fixed.Height - frame.TurnedHeight) < 0)
                continue;
            trials += (long)(toX - fromX + 1) * (toY - fromY + 1);
            AlignmentVotes found = Best(moved, @fixed, frame, (fromX, toX), (fromY, toY), out AlignmentVotes unmoved);
            if (orientation == FrameOrientation.AsIs)
                plain = unmoved;
            if (best is null || found.Votes > best.Votes)
                best = found;
        }
        if (best is null)
            return new AlignmentVotes(new FrameAlignment(0, moved.Width, moved.Height, 0, 0), 0, 0, 0, 1);
        // a frame that already fits is not moved for a few more votes
        if (plain is { } p && p.ChanceOver(1) < Chance && 2 * p.Votes >= best.Votes)
            best = p;
        return best with { Trials = trials, Unmoved = plain };
    }

    private static (int From, int To) Shifts(int room) =>
        (Math.Min(0, room) - FarthestShift, Math.Max(0, room) + FarthestShift);

    private static AlignmentVotes Best(
        HotPixelSet moved,
        HotPixelSet @fixed,
        FrameAlignment frame,
        (int From, int To) x,
        (int From, int To) y,
        out AlignmentVotes unmoved
    )
    {
        (int left, int top) = (x.From - Margin, y.From - Margin);
        int columns = x.To - x.From + 1 + 2 * Margin,
            rows = y.To - y.From + 1 + 2 * Margin;
        var votes = new int[columns * rows];
        (int X, int Y)[] turned = [.. moved.Places.Select(p => frame.Moved(p.X, p.Y))];
        foreach ((int ax, int ay) in turned)
        foreach ((int bx, int by) in @fixed.Places)
        {
            (int column, int row) = (bx - ax - left, by - ay - top);
            if ((uint)column < (uint)columns && (uint)row < (uint)rows)
                votes[row * columns + column]++;
        }
        (int X, int Y) best = (0, 0);
        int most = -1;
        for (int dy = y.From; dy <= y.To; dy++)
        for (int dx = x.From; dx <= x.To; dx++)
        {
            int here = votes[(dy - top) * columns + dx - left];
            if (here > most || (here == most && Math.Abs(dx) + Math.Abs(dy) < Math.Abs(best.X) + Math.Abs(best.Y)))
                (most, best) = (here, (dx, dy));
        }
        double uniform =
            (double)moved.Places.Count
            * @fixed.Places.Count
            / Math.Max((double)@fixed.Width * @fixed.Height, (double)frame.TurnedWidth * frame.TurnedHeight);
        AlignmentVotes At(int dx, int dy) =>
            new(
                frame with
                {
                    ShiftX = dx,
                    ShiftY = dy,
                },
                votes[(dy - top) * columns + dx - left],
                Math.Max(uniform, Around(votes, columns, rows, dx - left, dy - top)),
                Math.Min(moved.Places.Count, @fixed.Places.Count),
                1
            );
        unmoved = At(0, 0);
        return At(best.X, best.Y);
    }

    /// <summary>
    /// Mean votes that chance gives at a shift: the largest of the means over the shifts around it, along its row and
    /// along its column, since hot rows, hot columns and glow at an edge coincide with themselves along their length.
    /// The nearest neighbours are left out, because blooming makes them resemble the shift itself.
    /// </summary>
    private static double Around(int[] votes, int columns, int rows, int column, int row)
    {
        (double all, double along, double down) = (0, 0, 0);
        (int n, int nAlong, int nDown) = (0, 0, 0);
        for (int y = Math.Max(0, row - Margin); y <= Math.Min(rows - 1, row + Margin); y++)
        for (int x = Math.Max(0, column - Margin); x <= Math.Min(columns - 1, column + Margin); x++)
        {
            if (Math.Abs(x - column) <= 1 && Math.Abs(y - row) <= 1)
                continue;
            int here = votes[y * columns + x];
            (all, n) = (all + here, n + 1);
            if (y == row)
                (along, nAlong) = (along + here, nAlong + 1);
            if (x == column)
                (down, nDown) = (down + here, nDown + 1);
        }
        return Math.Max(all / Math.Max(1, n), Math.Max(along / Math.Max(1, nAlong), down / Math.Max(1, nDown)));
    }
}

/// <summary>An alignment and the hot pixels that support it.</summary>
/// <param name="Alignment">Where the frame lies.</param>
/// <param name="Votes">Hot pixels in common.</param>
/// <param name="Expected">Hot pixels in common expected by chance.</param>
/// <param name="Pixels">Hot pixels of the smaller set.</param>
/// <param name="Trials">Number of shifts and orientations tried.</param>
internal sealed record AlignmentVotes(FrameAlignment Alignment, int Votes, double Expected, int Pixels, long Trials)
{
    /// <summary>The votes without any turn or shift; null where sizes forbid it.</summary>
    public AlignmentVotes? Unmoved { get; init; }

    /// <summary>Whether there are more votes than chance explains.</summary>
    public bool Found => ChanceOver(Trials) < HotPixelVotes.Chance;

    /// <summary>Probability of this many votes or more in any of the trials: trials·P(N ≥ votes), N Poisson.</summary>
    public double ChanceOver(long trials) =>
        Votes <= 0 || Expected <= 0 ? 1 : Math.Min(1, trials * SpecialFunctions.GammaLowerRegularized(Votes, Expected));

    /// <summary>
    /// Largest share of the smaller set that may be in common, at the same error probability: the upper limit of a
    /// Poisson mean with this many votes, less the mean expected by chance.
    /// </summary>
    public double LargestShare =>
        Pixels == 0
            ? 1
            : Math.Min(
                1,
                Math.Max(
                    0,
                    MathNet.Numerics.Distributions.Gamma.InvCDF(Votes + 1, 1, 1 - HotPixelVotes.Chance) - Expected
                ) / Pixels
            );
}
