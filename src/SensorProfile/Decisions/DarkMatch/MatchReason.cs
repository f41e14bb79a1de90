using SensorProfile.Decisions.Settling;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.DarkMatch;

/// <summary>What a verdict on lights and darks rests on.</summary>
internal enum MatchGround
{
    /// <summary>No dark set has the camera, size and settings of the lights.</summary>
    NoneAlike,

    /// <summary>Frames of another size.</summary>
    OtherSize,

    /// <summary>Frames of this size from another part of the sensor.</summary>
    OtherPlace,

    /// <summary>Frames of another camera.</summary>
    OtherCamera,

    /// <summary>Taken with other settings.</summary>
    OtherSettings,

    /// <summary>The headers fit several modes of the profile; no mode is guessed.</summary>
    SeveralModes,

    /// <summary>An exposure or a temperature is not known.</summary>
    NotKnown,

    /// <summary>Same settings, exposure and temperature; without a profile, the loss is not known.</summary>
    AlikeWithoutProfile,

    /// <summary>Exposure or temperature differ, and no profile says what that costs.</summary>
    NoProfile,

    /// <summary>Exposure or temperature differ, and the profile does not know the spread over pixels.</summary>
    NoSpread,

    /// <summary>Lights or darks lie outside the range in which the profile was measured.</summary>
    OutOfReach,

    /// <summary>The lights are full.</summary>
    White,

    /// <summary>The noise of the stack, compared with the limits.</summary>
    Measured,
}

/// <summary>What is not known about a pair.</summary>
internal enum UnknownOfPair
{
    /// <summary>Exposure of the lights.</summary>
    LightExposure,

    /// <summary>Exposure of the darks.</summary>
    DarkExposure,

    /// <summary>Temperature of the lights.</summary>
    LightTemperature,

    /// <summary>Temperature of the darks.</summary>
    DarkTemperature,
}

/// <summary>Why a pair is judged as it is.</summary>
/// <param name="Ground">What the verdict rests on.</param>
internal sealed record MatchReason(MatchGround Ground)
{
    /// <summary>What is not known; null when all is.</summary>
    internal UnknownOfPair? Unknown { get; init; }

    /// <summary>
    /// The modes of the profile that fit the headers, where there are several; where no darks match, the settings of
    /// those of this camera and size.
    /// </summary>
    public IReadOnlyList<ModeSettings> Modes { get; init; } = [];

    /// <summary>Why the profile cannot judge the pair; null when it can.</summary>
    public Finding? Refusal { get; init; }

    /// <summary>Use of the limit that is closest, or exceeded most; null when it was not computed.</summary>
    internal LimitUse? Limit { get; init; }

    /// <summary>What would settle a verdict that the uncertainty leaves open.</summary>
    internal SettlingOutcome? Settled { get; init; }
}

/// <summary>Use of one limit by a pair, and the darks that would fit in any case.</summary>
/// <param name="Cause">Which limit.</param>
/// <param name="Share">How much of it is used: 1 is the limit.</param>
/// <param name="StackLights">Lights in the stack that the set is part of.</param>
/// <param name="DarksNeeded">Darks like the lights that keep the loss.</param>
internal sealed record LimitUse(BindingCause Cause, double Share, int StackLights, int DarksNeeded);
