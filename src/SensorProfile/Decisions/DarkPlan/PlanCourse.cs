using SensorProfile.Decisions.DarkCount;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>A plan while it is worked out.</summary>
internal sealed class PlanCourse
{
    internal List<MasterPlan> Masters { get; set; } = [];

    internal List<UnplannedLights> Unplanned { get; } = [];

    internal List<DarkCountAnswer> Stacks { get; } = [];

    /// <summary>The first refusal, for a plan in which nothing can be answered.</summary>
    internal DecisionRefusedException? Refused { get; set; }

    /// <summary>Masters of the plan with the fewest masters, and its frames.</summary>
    internal int CoverMasters { get; set; }

    internal double CoverFrames { get; set; }

    /// <summary>
    /// Darks that would give the distribution over pixels which a plan over several temperatures needs; null when it is
    /// there or not needed.
    /// </summary>
    internal SettlingFrames? Blind { get; set; }

    /// <summary>Standard uncertainty of the number of frames.</summary>
    internal double FramesUncertainty { get; private set; }

    internal double Low { get; private set; }

    internal double High { get; private set; }

    /// <summary>
    /// Adds the frames of one exposure and mode; different ones are taken as independent for the deviation, and as
    /// alike for the interval.
    /// </summary>
    internal void AddTotal(UncertaintyDraws.Spread spread, double frames)
    {
        FramesUncertainty = double.Hypot(FramesUncertainty, spread.StandardDeviation);
        Low += Math.Floor(spread.Low ?? frames);
        High += Math.Ceiling(spread.High ?? frames);
    }
}
