namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Mean time that a pixel with two levels stays in each.</summary>
/// <remarks>Two states with exponential dwell times: after Δt, the state is the same as before by chance plus the
/// memory exp(−Δt/τ), 1/τ = 1/upper + 1/lower; the share f of time in the upper state is taken from the frames. τ
/// maximises the likelihood of the states in consecutive frames; upper = τ/(1 − f), lower = τ/f. A set that stayed in
/// one level counts as both, each weighted with its share.</remarks>
/// <param name="UpperSeconds">s.</param> <param name="LowerSeconds">s.</param>
/// <param name="Factor">The true times lie within this factor, up or down, at one standard uncertainty: that of τ
/// combined with that of f, u² = f(1 − f)/Σn(1 − ρ)/(1 + ρ) over sets of n frames with the memory ρ from one to the
/// next, on the side where it matters more.</param>
internal sealed record DwellTimes(double UpperSeconds, double LowerSeconds, double Factor)
{
    private const double MinEvidence = 3; // log-likelihood relative to a pixel without memory: a factor of 20
    private const double Step = 0.05; // of ln τ
    private const int MinSwitches = 3;

    /// <summary>
    /// Estimates the times; null when the pixel switches faster than frames are taken, or so slowly that fewer than 3
    /// changes were seen.
    /// </summary>
    /// <param name="runs">The sets of frames.</param>
    /// <param name="upperShare">Share of frames in the upper state, 0…1.</param>
    public static DwellTimes? Measure(IReadOnlyList<DwellRun> runs, double upperShare)
    {
        runs = [.. runs.Where(r => r.StartSeconds.Length > 1 && r.StartSeconds.All(double.IsFinite))];
        double[] intervals =
        [
            .. runs.SelectMany(r => r.StartSeconds.Zip(r.StartSeconds.Skip(1), (a, b) => b - a)).Where(d => d > 0),
        ];
        if (runs.Sum(r => Switches(r.Upper)) < MinSwitches || intervals.Length == 0 || upperShare is <= 0 or >= 1)
            return null;
        double first = 0.1 * intervals.Min(),
            last = 100 * intervals.Max();
        int steps = (int)Math.Ceiling(Math.Log(last / first) / Step);
        double Tau(int k) => first * Math.Exp(k * Step);
        double[] likelihood = [.. Enumerable.Range(0, steps).Select(k => LogLikelihood(runs, upperShare, Tau(k)))];
        int best = Enumerable.Range(0, steps).MaxBy(k => likelihood[k]);
        if (best == steps - 1 || likelihood[best] - LogLikelihood(runs, upperShare, 0) < MinEvidence)
            return null;
        // One standard uncertainty: where the log-likelihood has fallen by ½, on the wider side.
        int low = best,
            high = best;
        while (low > 0 && likelihood[low] > likelihood[best] - 0.5)
            low--;
        while (high < steps - 1 && likelihood[high] > likelihood[best] - 0.5)
            high++;
        double tau = Tau(best),
            ofTau = Math.Log(Math.Max(Tau(high) / tau, tau / Tau(low))),
            ofShare = ShareDoubt(runs, upperShare, tau) / Math.Min(upperShare, 1 - upperShare);
        return new(tau / (1 - upperShare), tau / upperShare, Math.Exp(Math.Sqrt(ofTau * ofTau + ofShare * ofShare)));
    }

    /// <summary>
    /// Standard uncertainty of the share of time in the upper state; frames in quick succession add little information.
    /// </summary>
    private static double ShareDoubt(IReadOnlyList<DwellRun> runs, double upperShare, double tau)
    {
        double independent = 0;
        foreach (double[] starts in runs.Select(r => r.StartSeconds))
        {
            double memory = Memory((starts[^1] - starts[0]) / (starts.Length - 1), tau);
            independent += Math.Max(1, starts.Length * (1 - memory) / (1 + memory));
        }
        return Math.Sqrt(upperShare * (1 - upperShare) / independent);
    }

    private static int Switches(bool[]? states) =>
        states is null ? 0 : Enumerable.Range(1, states.Length - 1).Count(i => states[i] != states[i - 1]);

    private static double LogLikelihood(IReadOnlyList<DwellRun> runs, double upperShare, double tau)
    {
        double sum = 0;
        foreach (DwellRun run in runs)
            sum += run.Upper is { } states
                ? Known(run.StartSeconds, states, upperShare, tau)
                : Unknown(run.StartSeconds, upperShare, tau);
        return sum;
    }

    private static double Known(double[] starts, bool[] states, double upperShare, double tau)
    {
        double known = 0;
        for (int i = 1; i < starts.Length; i++)
        {
            double memory = Memory(starts[i] - starts[i - 1], tau);
            known += Math.Log(
                (states[i] == states[i - 1] ? memory : 0) + (1 - memory) * (states[i] ? upperShare : 1 - upperShare)
            );
        }
        return known;
    }

    /// <summary>Log-likelihood of a set that stayed in one level, which may be either.</summary>
    private static double Unknown(double[] starts, double upperShare, double tau)
    {
        double upper = Math.Log(upperShare),
            lower = Math.Log(1 - upperShare);
        for (int i = 1; i < starts.Length; i++)
        {
            double memory = Memory(starts[i] - starts[i - 1], tau);
            upper += Math.Log(memory + (1 - memory) * upperShare);
            lower += Math.Log(memory + (1 - memory) * (1 - upperShare));
        }
        double larger = Math.Max(upper, lower);
        return larger + Math.Log(Math.Exp(upper - larger) + Math.Exp(lower - larger));
    }

    private static double Memory(double seconds, double tau) => tau > 0 ? Math.Exp(-seconds / tau) : 0;
}
