using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.Profiles;

namespace SensorProfile.Decisions.FlatPlan;

/// <summary>Warnings about a plan of flats.</summary>
internal static class FlatPlanWarnings
{
    /// <summary>Warnings about the level.</summary>
    internal static IEnumerable<Finding> OfLevel(FlatLevel level, LossLimits limits)
    {
        if (!level.Unsaturated)
            yield return new Finding(
                FindingCodes.FlatLevelTooHigh,
                Severity.Warning,
                $"Flats at {Plain.Percent(level.Share!.Value)} of the full well leave the linear range in their brightest "
                    + "pixels: take fainter ones."
            );
        if (level is { Straight: false, Bend: { } bend })
            yield return new Finding(
                FindingCodes.FlatLevelBent,
                Severity.Warning,
                $"The response departs from a straight line: flats of this level leave a gradient of {Plain.Number(bend, 2)} "
                    + $"times the noise of the stack, more than {Plain.Number(limits.SmoothLimit, 2)}. A lamp that drifted "
                    + "while linearity was measured shows the same: measure it under a steady one."
            );
        if (level.Bend is null)
            yield return new Finding(
                FindingCodes.FlatLevelUntested,
                Severity.Note,
                "Linearity was not tested around the level of these flats, so only saturation limits it: add flats at four "
                    + "or more exposures under a steady light."
            );
    }

    /// <summary>Warnings about the flat-field residual.</summary>
    internal static IEnumerable<Finding> OfPattern(ModeProfile mode, FlatNoise noise, LossLimits limits)
    {
        if (mode.FlatResidual is null || mode.FlatResidualOverAreas is not { } areas)
        {
            yield return new Finding(
                FindingCodes.FlatPatternUnknown,
                Severity.Note,
                "The flat-field residual was not measured, so only the noise of the flats counts here: add 4 or more flats of one "
                    + "exposure and characterise again."
            );
            yield break;
        }
        double sure = areas.Value - 1.96 * areas.StandardUncertainty;
        if (noise.InStackNoise(sure / 100) > limits.SmoothLimit)
            yield return new Finding(
                FindingCodes.FlatGradientLeft,
                Severity.Warning,
                $"Over areas your flats leave {QuantityText.Of(areas)} of the signal on one another, "
                    + $"{Plain.Number(noise.InStackNoise(areas.Value / 100), 2)} times the noise of the stack: the lamp, or "
                    + "dust that moved. No number of flats removes that: keep light and optics as they are in the lights."
            );
    }

    /// <summary>A warning about more flats than most people take.</summary>
    internal static IEnumerable<Finding> OfNumber(double flats, double lossAtPractical, FlatBudget budget, double loss)
    {
        if (flats > DarksPlan.PracticalFrames)
            yield return new Finding(
                FindingCodes.MoreFlatsThanPractical,
                Severity.Warning,
                $"{Plain.Whole((long)flats)} flats are more than most people take; "
                    + $"{Plain.Whole(DarksPlan.PracticalFrames)} of them cost this stack {Plain.Percent(lossAtPractical)} "
                    + $"instead of {Plain.Percent(loss)}"
                    + (
                        budget.Stack.DitherPositions == budget.Stack.Lights
                            ? "."
                            : "; dithering over more positions divides what they cost."
                    )
            );
    }
}
