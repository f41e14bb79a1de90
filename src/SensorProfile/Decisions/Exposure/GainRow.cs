using SensorProfile.Profiles.Session;

namespace SensorProfile.Decisions.Exposure;

/// <summary>One measured mode in the choice of the gain setting.</summary>
/// <param name="Settings">The settings.</param>
/// <param name="ReadNoise">e-.</param>
/// <param name="Gain">e-/ADU.</param>
/// <param name="FullWell">e-; null when not measured.</param>
/// <param name="DynamicRange">stops; null when not measured.</param>
/// <param name="ExposureNeeded">Exposure from which the sky, and the dark current where it is counted, drowns the read
/// noise, s.</param>
/// <param name="LongestExposure">Exposure at which sky and dark current (of the pixel at 99.9 % where known) fill the
/// allowed part of the well, s; null without a full well.</param>
/// <param name="ReadNoiseShare">What read noise adds to the noise of a light of the exposure asked for, 0.05 = 5
/// %.</param>
/// <param name="Drowned">Whether the exposure asked for is long enough.</param>
/// <param name="DarkRate">Dark current of the typical pixel that was counted beside the sky, e-/px/s; null where the
/// temperature of the lights is not known.</param>
/// <param name="FillsHottest">Whether <paramref name="LongestExposure"/> is that of the hottest 0.1 % of the pixels, not of
/// the typical one.</param>
public sealed record GainRow(
    ModeSettings Settings,
    Measurement ReadNoise,
    Measurement Gain,
    Measurement? FullWell,
    Measurement? DynamicRange,
    Measurement ExposureNeeded,
    Measurement? LongestExposure,
    double ReadNoiseShare,
    bool Drowned,
    Measurement? DarkRate = null,
    bool FillsHottest = false
);
