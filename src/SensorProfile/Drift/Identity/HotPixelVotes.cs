using MathNet.Numerics;

namespace SensorProfile.Drift.Identity;

/// <summary>Finds how one frame lies in another of the same sensor, from the places of its hot pixels.</summary>
/// <remarks>
/// Every pair of one hot pixel here and one there votes for the shift that brings them together, in each of the eight
/// orientations. Hot pixels of another sensor meet by chance only: their votes are Poisson with the mean that the
/// shifts around show, which holds the crowding of both sets (glow, rows, a cluster) as well. An alignment is found
/// when the votes of the best shift would occur by chance, over all shifts that were tried, in less than
/// <see cref="Chance"/> of comparisons.
/// </remarks>
internal static class HotPixelVotes
{
    /// <summary>Chance of an alignment where there is none, all trials of a comparison together.</summary>
    public const double Chance = 1e-3;

    /// <summary>Shifts that are looked for between frames of one size, px.</summary>
    public const int FarthestShift = 4;

    // around the shifts that are looked for: they show what chance gives
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
            // a frame that is larger one way and smaller the other is no crop of the other
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
        // what lies as it should is not moved for a few votes
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
    /// What chance gives at a shift: the largest of the means over the shifts around it, over those along its row and
    /// over those along its column, since hot rows and columns and glow at an edge meet again along themselves. Its
    /// next
    /// neighbours are left out: blooming makes them alike.
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

/// <summary>An alignment with the hot pixels that speak for it.</summary>
/// <param name="Alignment">How the frame lies.</param>
/// <param name="Votes">Hot pixels in common.</param>
/// <param name="Expected">Such pixels by chance.</param>
/// <param name="Pixels">Hot pixels of the smaller set.</param>
/// <param name="Trials">Shifts and orientations that were tried.</param>
internal sealed record AlignmentVotes(FrameAlignment Alignment, int Votes, double Expected, int Pixels, long Trials)
{
    /// <summary>The same for the frame as it lies; null where sizes forbid it.</summary>
    public AlignmentVotes? Unmoved { get; init; }

    /// <summary>Whether chance does not give so many.</summary>
    public bool Found => ChanceOver(Trials) < HotPixelVotes.Chance;

    /// <summary>Chance of so many votes or more in any of the trials: trials·P(N ≥ votes), N Poisson.</summary>
    public double ChanceOver(long trials) =>
        Votes <= 0 || Expected <= 0 ? 1 : Math.Min(1, trials * SpecialFunctions.GammaLowerRegularized(Votes, Expected));

    /// <summary>
    /// Largest share of the smaller set that may be in common, at the same chance of being wrong: the upper limit of a
    /// Poisson mean with these votes, less what chance gives.
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
