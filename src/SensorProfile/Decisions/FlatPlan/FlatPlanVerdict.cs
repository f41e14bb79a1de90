namespace SensorProfile.Decisions.FlatPlan;

/// <summary>Whether flats can stay within the accepted loss.</summary>
public enum FlatPlanVerdict
{
    /// <summary>This number of flats does.</summary>
    Answered,

    /// <summary>No number does: the flat-field residual alone costs more.</summary>
    Limited,
}

/// <summary>What limits the level of the flats.</summary>
internal enum FlatLevelLimit
{
    /// <summary>The brightest pixels of a brighter flat would leave the linear range.</summary>
    Saturation,

    /// <summary>A brighter flat, bent by the response, would leave a gradient in the stack.</summary>
    Linearity,

    /// <summary>No brighter flats were measured, and the full well is not known.</summary>
    BrightestMeasured,

    /// <summary>The level was given.</summary>
    Given,
}
