namespace SensorProfile.Decisions.Tolerance;

/// <summary>
/// Where the limits of a random draw are expected: at those of the best model; where outliers are rejected, which makes
/// a load of hot pixels costly to evaluate, with the shape of that load.
/// </summary>
internal sealed class ExpectedLimits
{
    private readonly MismatchLimits best;
    private readonly LoadShape? warmer,
        colder,
        longer,
        shorter; // of hot pixels

    /// <param name="best">The limits of the best model.</param>
    /// <param name="mismatch">The best model.</param>
    /// <param name="scaled">Whether the darks are scaled.</param>
    internal ExpectedLimits(MismatchLimits best, DarkMismatch mismatch, bool scaled)
    {
        this.best = best;
        if (!mismatch.RejectsOutliers)
            return;
        const BindingCause cause = BindingCause.HotPixels;
        LoadShape? Shape(double? limit, Func<double, double> load) =>
            limit is double crossing ? LoadShape.About(load, crossing) : null;
        warmer = Shape(best.HotPixels.Warmer, d => mismatch.LoadWarmer(cause, d, scaled));
        colder = Shape(best.HotPixels.Colder, d => mismatch.LoadWarmer(cause, -d, scaled));
        longer = Shape(best.HotPixels.Longer, d => mismatch.LoadLonger(cause, d, scaled));
        shorter = Shape(best.HotPixels.Shorter, d => mismatch.LoadLonger(cause, -d, scaled));
    }

    internal LimitCrossing.Expected Warmer(BindingCause cause) => new(best.Of(cause).Warmer, Of(cause, warmer));

    internal LimitCrossing.Expected Colder(BindingCause cause) => new(best.Of(cause).Colder, Of(cause, colder));

    internal LimitCrossing.Expected Longer(BindingCause cause) => new(best.Of(cause).Longer, Of(cause, longer));

    internal LimitCrossing.Expected Shorter(BindingCause cause) => new(best.Of(cause).Shorter, Of(cause, shorter));

    private static LoadShape? Of(BindingCause cause, LoadShape? ofHotPixels) =>
        cause == BindingCause.HotPixels ? ofHotPixels : null;
}
