namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Whether a plan holds all that was asked for.</summary>
public enum PlanVerdict
{
    /// <summary>Every planned light is served.</summary>
    Answered,

    /// <summary>Some lights could not be planned for, or how far a master serves is not known.</summary>
    CannotTell,
}
