using System.Globalization;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>Finds the mode of a profile that a question is about.</summary>
public static class ModeChoice
{
    /// <summary>The only mode, or the one whose settings agree with those given.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="wanted">Settings that are known; null members match anything. Null when the user named
    /// none.</param>
    /// <exception cref="DecisionRefusedException">No mode, or more than one, fits.</exception>
    public static ModeProfile Find(CameraProfile profile, ModeSettings? wanted)
    {
        if (profile.Modes.Count == 0)
            throw Refuse.CannotTell(
                FindingCodes.ProfileEmpty,
                "The profile holds no measured mode: characterise the camera again."
            );
        ModeProfile[] fitting = [.. profile.Modes.Where(m => wanted is null || Matches(m.Settings, wanted))];
        string known = string.Join("; ", profile.Modes.Select(m => Name(m.Settings)));
        return fitting.Length switch
        {
            1 => fitting[0],
            0 => throw Refuse.CannotTell(
                FindingCodes.ModeNotMeasured,
                $"The profile has no mode with {Name(wanted!)}; it was measured at {known}."
            ),
            _ => throw Refuse.BadArgument(
                FindingCodes.ModeNotNamed,
                $"The profile holds {Plain.Whole(fitting.Length)} modes ({known}): say which {Differing(fitting)} you mean."
            ),
        };
    }

    /// <summary>Whether settings agree; a setting that is null on either side is ignored.</summary>
    internal static bool Matches(ModeSettings a, ModeSettings b) =>
        Same(a.Gain, b.Gain)
        && Same(a.Offset, b.Offset)
        && Same(a.Iso, b.Iso)
        && a.Binning == b.Binning
        && (a.Readout is null || b.Readout is null || a.Readout == b.Readout);

    /// <summary>The settings in words: "gain 100, offset 30, 1x1".</summary>
    internal static string Name(ModeSettings settings)
    {
        var parts = new List<string>();
        if (settings.Gain is double gain)
            parts.Add("gain " + gain.ToString(CultureInfo.InvariantCulture));
        if (settings.Offset is double offset)
            parts.Add("offset " + offset.ToString(CultureInfo.InvariantCulture));
        if (settings.Iso is double iso)
            parts.Add("ISO " + iso.ToString(CultureInfo.InvariantCulture));
        if (settings.Binning != "1x1" || parts.Count == 0)
            parts.Add("binning " + settings.Binning);
        if (settings.Readout is { } readout)
            parts.Add(readout);
        return string.Join(", ", parts);
    }

    /// <summary>Names the settings that tell the modes apart: "gain or offset".</summary>
    private static string Differing(ModeProfile[] modes)
    {
        (string Name, Func<ModeSettings, object?> Value)[] settings =
        [
            ("gain", s => s.Gain),
            ("offset", s => s.Offset),
            ("ISO", s => s.Iso),
            ("binning", s => s.Binning),
            ("read-out mode", s => s.Readout),
        ];
        string[] differing =
        [
            .. settings
                .Where(setting => modes.Select(m => setting.Value(m.Settings)).Distinct().Count() > 1)
                .Select(setting => setting.Name),
        ];
        return string.Join(" or ", differing.DefaultIfEmpty("one"));
    }

    private static bool Same(double? a, double? b) => a is null || b is null || a == b;
}
