namespace SensorProfile.FixedPattern.Telegraph;

/// <summary>Tests whether a pixel jumps between levels (random telegraph signal) or is merely noisy.</summary>
/// <remarks>
/// Every set of frames has a free base level; one step, common to all sets, is either the same in every frame (readout)
/// or proportional to the dark signal (thermal). The frames are divided into levels so that the scatter left within the
/// levels, Q, is smallest; Q₀ is the scatter about one level per set. Both are in units of what noise and signal
/// explain plus a variance, the same in all sets, for the extra noise of a noisy pixel (it adds as much to a short dark
/// as to a long one, and no set must dominate the sum). For a division fixed in advance, a normal pixel with any noise
/// has Q/Q₀ ~ Beta((ν − 1)/2, ½), ν = frames − sets. The division was chosen among M, so the probability is at most M
/// times that (Bonferroni): ln p ≤ ln M + a·ln r − ln a − ln B(a, ½) − ½·ln(1 − r), a = (ν − 1)/2, r = Q/Q₀; M = ½·Π(2ⁿ
/// − 1) for two levels, ½·Π3ⁿ for three, times the choices of frames left out as hits, divided by the share of the
/// probability given to the model (half to a readout step with two levels and no hit left out, a quarter to a thermal
/// one, the last quarter to the ten others). The bound is tight where it matters: well-separated levels allow only one
/// division. Q is never taken below what camera noise leaves, so samples that happen to agree, or noise hidden by
/// coarse codes, prove nothing. This p does not depend on the noise of the pixel and must itself be 0.01 or less:
/// excess noise alone is no evidence of levels. Pixels with up to f times the camera noise (f an input) are common, far
/// noisier ones are not. So the size of Q₀, independent of r for normal noise, counts by ln s ≤ ν/2·(1 − x + ln x), x =
/// Q₀/(ν·f²) > 1 (Q₀ in units of noise and signal alone; Chernoff bound of the χ² tail), and the two are combined by
/// Fisher's method for independent probabilities, ln q = ln p + ln s, probability = q·(1 − ln q); half the stated
/// probability goes to p alone and half to this. A level must be seen in at least 3 frames and left at least twice (for
/// a thermal step, in sets where it exceeds 6 standard deviations: otherwise the noise of the short darks would join a
/// single hit in a long one), and up to 2 frames may be left out as charged-particle hits.
/// </remarks>
internal static class TelegraphTest
{
    private const int MinPerLevel = 3,
        MinSwitches = 2,
        MaxHits = 2;

    // readout or thermal, 2 or 3 levels, hits left out; minus the two plain ones
    private const int OtherModels = 2 * 2 * (MaxHits + 1) - 2;
    private static readonly double leastEvidence = Math.Log(0.01);

    // frames or degrees of freedom: every pixel needs the same logarithms
    private const int Tabulated = 1024;
    private static readonly double[] logsOfTwo = [.. Enumerable.Range(0, Tabulated).Select(LogOfTwo)];
    private static readonly double[] logBetas =
    [
        .. Enumerable.Range(0, Tabulated).Select(freedom => freedom < 2 ? 0 : LogBeta((freedom - 1) / 2.0, 0.5)),
    ];
    private const int MaxRounds = 20;
    private const int StartsOfThree = 3; // the search for three levels is slower

    /// <summary>
    /// Finds the best division of the samples of a pixel; null when none sees each level often enough.
    /// </summary>
    /// <param name="groups">Sets of frames; sets of a single frame say nothing.</param>
    /// <param name="noiseFactor">f: standard deviation, relative to the camera noise, up to which a pixel is merely
    /// noisy.</param>
    public static TelegraphFit? Run(IReadOnlyList<SampleGroup> groups, double noiseFactor)
    {
        SampleGroup[] all = [.. groups.Where(g => g.Values.Length > 1)];
        Candidate? best = null;
        HighestSamples? highest = null;
        for (int hits = 0; hits <= MaxHits; hits++)
        {
            if (hits > 0)
                all = (highest ??= new(all)).Removed();
            var samples = new TelegraphSamples(all);
            if (samples.Frames < 2 * MinPerLevel)
                break;
            for (int levels = 2; levels <= 3; levels++)
                foreach (bool thermal in (bool[])[false, true])
                {
                    double logChoices = LogBinomial(samples.Frames + hits, hits) - LogShare(thermal, levels, hits);
                    bool Proves(double share) => LogChance(samples, share, levels, logChoices) <= leastEvidence;
                    // Most noisy pixels end here: not even a division that leaves only camera noise, or the best
                    // possible one, would prove anything.
                    if (!Proves(samples.Floor / samples.Scatter) || !Proves(samples.MinShare(levels, thermal)))
                        continue;
                    if (
                        Best(samples, thermal, levels, logChoices, noiseFactor) is { } found
                        && (best is null || found.Fit.LogChance < best.Fit.LogChance)
                    )
                        best = found;
                }
        }
        // Dwell times take longer than everything else, so only where there may be levels.
        return best is { Fit.Levels: 2 } && best.Fit.LogChance <= leastEvidence
            ? best.Fit with
            {
                Dwell = best.Dwell(),
            }
            : best?.Fit;
    }

    /// <summary>A division, with its fit and the samples it divides.</summary>
    private sealed record Candidate(TelegraphFit Fit, SampleGroup[] Groups, byte[][] States)
    {
        public DwellTimes? Dwell() =>
            DwellTimes.Measure(
                [
                    .. Groups.Select(
                        (g, k) =>
                            new DwellRun(
                                g.StartSeconds,
                                IsDivided(States[k]) ? [.. States[k].Select(z => z > 0)] : null
                            )
                    ),
                ],
                Fit.UpperShare
            );
    }

    private static Candidate? Best(
        TelegraphSamples samples,
        bool thermal,
        int levels,
        double logChoices,
        double noiseFactor
    )
    {
        var division = new StateDivision(samples, thermal, levels);
        StateDivision.Solution? best = null;
        byte[][] bestStates = [];
        foreach (double start in division.Starts().Take(levels == 2 ? int.MaxValue : StartsOfThree))
        {
            StateDivision.Solution found = division.Improve(start, MaxRounds);
            if (!(found.Reduction > (best?.Reduction ?? 0)))
                continue;
            byte[][] states = division.States(found);
            if (Admissible(division.Resolved(found, states), levels))
                (best, bestStates) = (found, states);
        }
        return best is null
            ? null
            : new(
                Judge(samples, best, bestStates, thermal, levels, logChoices, noiseFactor),
                samples.Groups,
                bestStates
            );
    }

    private static double Joined(double form, double total, int freedom, double noiseFactor)
    {
        if (form > leastEvidence)
            return 0;
        double x = total / freedom / (noiseFactor * noiseFactor),
            q = form + (x > 1 ? freedom / 2.0 * (1 - x + Math.Log(x)) : 0);
        return Math.Min(0, Math.Min(form, q + Math.Log(1 - q)) + Math.Log(2));
    }

    /// <summary>
    /// Share of the probability given to a model; the shares add up to 1. Common models cost little, rare ones more.
    /// </summary>
    private static double LogShare(bool thermal, int levels, int hits) =>
        Math.Log(
            levels > 2 || hits > 0 ? 0.25 / OtherModels
            : thermal ? 0.25
            : 0.5
        );

    private static double LogChance(TelegraphSamples samples, double r, int levels, double logChoices)
    {
        int freedom = samples.Freedom;
        if (freedom < 2 || !(r < 1))
            return 0;
        double a = (freedom - 1) / 2.0;
        double logDivisions = 0,
            logBeta = freedom < Tabulated ? logBetas[freedom] : LogBeta(a, 0.5);
        foreach (SampleGroup group in samples.Groups)
        {
            int frames = group.Values.Length;
            logDivisions +=
                levels == 2
                    ? frames < Tabulated
                        ? logsOfTwo[frames]
                        : LogOfTwo(frames)
                    : frames * Math.Log(3);
        }
        logDivisions -= Math.Log(2);
        return Math.Min(0, a * Math.Log(r) - Math.Log(a) - logBeta - 0.5 * Math.Log(1 - r) + logDivisions + logChoices);
    }

    private static TelegraphFit Judge(
        TelegraphSamples samples,
        StateDivision.Solution found,
        byte[][] states,
        bool thermal,
        int levels,
        double logChoices,
        double noiseFactor
    )
    {
        double within = Math.Max(samples.Scatter - found.Reduction, samples.Floor);
        byte[][] divided = [.. states.Where(IsDivided)];
        double share = divided.Sum(s => s.Sum(z => (double)z)) / (levels - 1) / divided.Sum(s => s.Length);
        return new TelegraphFit
        {
            LogChance = Joined(
                LogChance(samples, within / samples.Scatter, levels, logChoices),
                samples.CameraScatter,
                samples.Freedom,
                noiseFactor
            ),
            Levels = levels,
            Thermal = thermal,
            Step = found.Step,
            StepUncertainty = Math.Sqrt(within / Math.Max(1, samples.Freedom - 1) / found.Information),
            LargestStep = found.Step * (thermal ? samples.Groups.Max(g => g.Thermal) : 1),
            UpperShare = share,
            Switches = Switches(states),
        };
    }

    private static bool Admissible(byte[][] states, int levels)
    {
        states = [.. states.Where(IsDivided)]; // for a set that stayed in one level, which one is unknown
        int lowest = states.Sum(s => s.Count(z => z == 0)),
            highest = states.Sum(s => s.Count(z => z == levels - 1)),
            frames = states.Sum(s => s.Length);
        return lowest >= MinPerLevel
            && highest >= MinPerLevel
            && (levels == 2 || frames - lowest - highest >= MinPerLevel)
            && Switches(states) >= MinSwitches;
    }

    private static int Switches(byte[][] states) =>
        states.Sum(s => Enumerable.Range(1, s.Length - 1).Count(i => s[i] != s[i - 1]));

    private static bool IsDivided(byte[] states) => states.AsSpan().ContainsAnyExcept(states[0]);

    /// <summary>ln(2ⁿ − 1), for the number of divisions of a set into two levels.</summary>
    private static double LogOfTwo(int frames) => frames * Math.Log(2) + Math.Log(1 - Math.Pow(2, -frames));

    private static double LogBeta(double a, double b) =>
        MathNet.Numerics.SpecialFunctions.GammaLn(a)
        + MathNet.Numerics.SpecialFunctions.GammaLn(b)
        - MathNet.Numerics.SpecialFunctions.GammaLn(a + b);

    private static double LogBinomial(int n, int k) => k == 0 ? 0 : MathNet.Numerics.SpecialFunctions.BinomialLn(n, k);
}
