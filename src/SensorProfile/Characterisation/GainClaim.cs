using SensorProfile.Frames;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>The gain that headers state (EGAIN) beside the measured one: shown for comparison, never used.</summary>
internal static class GainClaim
{
    private const double NotableDifference = 0.1;

    // a claim per native code is off by the code step, give or take its own error
    private const double SameFactor = 0.15;

    /// <summary>Compares the two, where both are known.</summary>
    public static void Report(IReadOnlyList<Frame> frames, Measurement? gain, int codeStep, FindingsLog log)
    {
        double[] claims = [.. frames.Select(f => f.ClaimedGain).OfType<double>().Distinct().Order()];
        if (gain is null || claims.Length != 1)
            return;
        double claim = claims[0],
            ratio = gain.Value / claim,
            sigmas = Math.Abs(gain.Value - claim) / gain.StandardUncertainty;
        string verdict =
            sigmas < 3 ? "they agree"
            : codeStep > 1 && Math.Abs(ratio * codeStep - 1) < SameFactor
                ? Invariant(
                    $"the header counts per code of the converter, of which {codeStep} make one step of the file"
                )
            : Invariant(
                $"the measured one is {100 * Math.Abs(ratio - 1):0.#} % {(ratio > 1 ? "higher" : "lower")} and is used"
            );
        log.Add(
            FindingCodes.GainClaimed,
            Math.Abs(ratio - 1) > NotableDifference ? Severity.Warning : Severity.Note,
            Invariant(
                $"The headers state a gain of {claim:0.####} e⁻/ADU (EGAIN), the flats say {gain.Value:0.####} ± "
            ) + Invariant($"{gain.StandardUncertainty:0.####}: {verdict}.")
        );
    }
}
