namespace SensorProfile.Decisions.FlatPlan;

/// <summary>Whether flats can keep the accepted loss.</summary>
public enum FlatPlanVerdict
{
    /// <summary>So many flats keep it.</summary>
    Answered,

    /// <summary>No number keeps it: what flats leave on flats costs more by itself.</summary>
    Limited,
}

/// <summary>What the level of the flats is limited by.</summary>
internal enum FlatLevelLimit
{
    /// <summary>The brightest pixels of a brighter flat would leave the linear range.</summary>
    Saturation,

    /// <summary>A brighter flat, bent by the response, would leave a gradient in the stack.</summary>
    Linearity,

    /// <summary>No brighter flats were measured, and the full well is not known.</summary>
    BrightestMeasured,

    /// <summary>It was given.</summary>
    Given,
}
