using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>A plan while it is being worked out.</summary>
internal sealed class PlanCourse
{
    internal List<MasterPlan> Masters { get; set; } = [];

    internal List<UnplannedLights> Unplanned { get; } = [];

    internal List<DarkCountAnswer> Stacks { get; } = [];

    /// <summary>The first refusal, for a plan that cannot answer anything.</summary>
    internal DecisionRefusedException? Refused { get; set; }

    /// <summary>Masters of the plan with the fewest masters.</summary>
    internal int CoverMasters { get; set; }

    internal double CoverFrames { get; set; }

    /// <summary>
    /// Darks that would give the distribution over pixels that a plan over several temperatures needs; null when it
    /// exists or is not needed.
    /// </summary>
    internal SettlingFrames? Blind { get; set; }

    /// <summary>Standard uncertainty of the number of frames.</summary>
    internal double FramesUncertainty { get; private set; }

    internal double Low { get; private set; }

    internal double High { get; private set; }

    /// <summary>
    /// Adds the frames of one exposure and mode; the uncertainty treats different ones as independent, the interval as
    /// fully correlated.
    /// </summary>
    internal void AddTotal(UncertaintyDraws.Spread spread, double frames)
    {
        FramesUncertainty = double.Hypot(FramesUncertainty, spread.StandardDeviation);
        Low += Math.Floor(spread.Low ?? frames);
        High += Math.Ceiling(spread.High ?? frames);
    }
}
