using SensorProfile.NoiseModel;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>What to know about a computed dark before using it.</summary>
internal static class PredictionFindings
{
    /// <summary>
    /// A plain way is worth mentioning where it leaves less than this share of what the computed dark leaves.
    /// </summary>
    private const double WorthSaying = 0.8;

    /// <summary>The findings.</summary>
    /// <param name="trials">All trials on left-out darks.</param>
    /// <param name="test">Those that apply to the question.</param>
    /// <param name="proof">What was left out in them.</param>
    /// <param name="pixels">The computed pixels.</param>
    /// <param name="pinned">Whether the camera pins its black level.</param>
    /// <param name="levelDoubt">Uncertainty of the common level, e-; 0 for none.</param>
    internal static IEnumerable<Finding> Judge(
        DarkPredictionProfile trials,
        PredictionTest test,
        PredictionProof proof,
        PredictedPixels pixels,
        bool pinned,
        double levelDoubt
    )
    {
        if (pinned)
            yield return new(
                FindingCodes.LevelPinned,
                Severity.Warning,
                "The camera pins its black level, so the computed dark keeps the level of the bias frames: the "
                    + "pattern is right; a common offset may remain, which is not noise."
            );
        if (pixels.Refused.Count > 0)
            yield return new(FindingCodes.ClassRefused, Severity.Warning, ClassNames.Refusal(pixels.Refused));
        PredictionClass? unsteady = test
            .Classes.Where(c => c is { Pixels: "hot", Refused: null, PlainCoverage: < 0.9 })
            .MinBy(c => c.PlainCoverage);
        if (unsteady is not null)
            yield return new(
                FindingCodes.HotPixelsUnsteady,
                Severity.Note,
                $"Some hot pixels change from set to set: of {ClassNames.Of(unsteady)} "
                    + $"{Plain.Percent(1 - unsteady.PlainCoverage)} lay outside the 95 % interval of their noise, so their "
                    + "uncertainty is widened until it holds 95 %. Dithering and rejection take care of them."
            );
        (PredictionTest? plain, string way) =
            proof == PredictionProof.Exposure
                ? (trials.ScalingByExposure, "scaled by exposure")
                : (trials.Interpolation, "mixed from the next colder and the next warmer temperature");
        if (
            plain is { Passed: true, Hot: { } less }
            && test.Hot is { } left
            && less.Residual.Value < WorthSaying * left.Residual.Value
        )
            yield return new(
                FindingCodes.PlainWayLeavesLess,
                Severity.Note,
                $"A dark {way} left {Plain.Number(less.Residual.Value, 2)} e⁻ in the hot pixels of the same trials, "
                    + $"the computed one {Plain.Number(left.Residual.Value, 2)} e⁻: where you have such darks, they do "
                    + "better."
            );
        if (pixels.Unmeasured > 0)
            yield return new(
                FindingCodes.PixelsNotMeasured,
                Severity.Note,
                $"{Plain.Whole(pixels.Unmeasured)} pixels have no measured dark rate (full in every dark); their "
                    + "uncertainty is not a number."
            );
        if (pixels.Full > 0)
            yield return new(
                FindingCodes.PixelsFull,
                Severity.Note,
                $"{Plain.Whole(pixels.Full)} hot pixels are full in the computed dark, as they will be in the "
                    + "lights."
            );
        if (levelDoubt > 0)
            yield return new(
                FindingCodes.LevelDoubt,
                Severity.Note,
                $"The common level is known to {Plain.Number(levelDoubt, 2)} e⁻ by the darks that were left out; "
                    + "this is in the uncertainty of every pixel and is not noise."
            );
    }
}
