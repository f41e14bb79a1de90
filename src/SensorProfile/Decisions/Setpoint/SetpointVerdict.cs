namespace SensorProfile.Decisions.Setpoint;

/// <summary>What can be said about a set point.</summary>
public enum SetpointVerdict
{
    /// <summary>The advised temperature stays within the loss.</summary>
    Holds,

    /// <summary>The loss cannot be kept; <see cref="SetpointLimit"/> says why.</summary>
    Limited,

    /// <summary>Without a cooler: the weather decides, and the answer says what it costs.</summary>
    Uncooled,

    /// <summary>The profile does not say.</summary>
    CannotTell,
}

/// <summary>Why the accepted loss cannot be kept.</summary>
internal enum SetpointLimit
{
    /// <summary>The cooler does not reach a temperature that is cold enough.</summary>
    Cooler,

    /// <summary>The darks of the profile end before that temperature.</summary>
    Range,

    /// <summary>The part of the dark current that cooling does not reduce exceeds the loss by itself.</summary>
    Glow,
}

/// <summary>What sets the advised temperature.</summary>
public enum SetpointBound
{
    /// <summary>The warmest temperature that stays within the loss.</summary>
    Loss,

    /// <summary>The air: a cooler does not heat.</summary>
    Air,

    /// <summary>The coldest temperature that the cooler can hold on the warmest of the nights.</summary>
    Cooler,

    /// <summary>The coldest darks of the profile.</summary>
    ColdestMeasured,

    /// <summary>The warmest darks of the profile.</summary>
    WarmestMeasured,
}
