namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Whether a plan covers everything that was asked for.</summary>
public enum PlanVerdict
{
    /// <summary>Every planned light is served.</summary>
    Answered,

    /// <summary>Some lights could not be planned for, or the reach of a master is not known.</summary>
    CannotTell,
}
