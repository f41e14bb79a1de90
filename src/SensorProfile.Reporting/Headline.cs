using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Drift.Archive;
using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting;

/// <summary>
/// The sentence at the head of a report and of the command's answer: the numbers that matter.
/// </summary>
internal static class Headline
{
    /// <summary>The sentence for a profile: that of its first mode, and how many others there are.</summary>
    /// <param name="profile">A profile.</param>
    public static string Sentence(CameraProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (profile.Modes.Count == 0)
            return profile.Findings.Any(f => f.Code == FindingCodes.KindMissing)
                ? "Say what these frames are: nothing could be measured without knowing which are bias, dark and flat frames."
                : "Nothing could be measured from these frames.";
        if (NotRaw(profile) is not null)
            return "These frames are not raw, so nothing about this camera can be measured from them: take raw frames, 16 bits, "
                + "without any correction in camera or capture program.";
        string first = Sentence(profile.Modes[0]);
        if (profile.Modes.Count == 1)
            return first;
        string others =
            profile.Modes.Count == 2
                ? "Another setting was measured too."
                : $"{profile.Modes.Count - 1} other settings were measured too.";
        return $"At {ModeLabel.Text(profile.Modes[0].Settings)}: {char.ToLowerInvariant(first[0])}{first[1..]} {others}";
    }

    /// <summary>The refusal of frames that are not raw, where there is no mode; null otherwise.</summary>
    public static Finding? NotRaw(CameraProfile profile) => ComparableProfiles.NotRaw(profile);

    /// <summary>The sentence for one mode.</summary>
    /// <param name="mode">A mode.</param>
    public static string Sentence(ModeProfile mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        var parts = new List<string>();
        if (mode.ReadNoise is not null)
            parts.Add($"read noise {QuantityText.Of(mode.ReadNoise)}");
        else if (mode.ReadNoiseAdu is not null)
            parts.Add($"read noise {QuantityText.Of(mode.ReadNoiseAdu)} (the gain is unknown)");
        if (mode.Gain is not null)
            parts.Add($"gain {QuantityText.Of(mode.Gain)}");
        parts.AddRange(Dark(mode));
        if (mode.HotPixelsAdu is { } hot)
            parts.Add($"{Counted.Nouns(hot.Hot, "hot pixel")} above {QuantityText.Number(hot.HotRate)} ADU/px/s");
        if (parts.Count == 0)
            return "None of read noise, gain and dark current could be measured.";
        string sentence = string.Join(", ", parts);
        return $"{FloorWarning(mode.DarkCurrent ?? mode.DarkCurrentAdu)}{char.ToUpperInvariant(sentence[0])}{sentence[1..]}.";
    }

    private static IEnumerable<string> Dark(ModeProfile mode)
    {
        DarkCurrentProfile? dark = mode.DarkCurrent ?? mode.DarkCurrentAdu;
        string unknown = mode.DarkCurrent is null && mode.ReadNoiseAdu is null ? " (the gain is unknown)" : "";
        if (dark?.RateAtReference is not null)
            yield return $"dark current {QuantityText.Of(dark.RateAtReference)}{At(dark.ReferenceTemperature)}{unknown}{Carried(dark)}";
        else if (Nights(mode.DarkNights) is { } nights)
            yield return nights + unknown;
        // What a light leak adds hardly changes with temperature, so the law without it is the sensor's own.
        if (dark is not null && DarkFloor.Find(dark) is { IsLarge: true } floor)
            yield return $"doubling every {QuantityText.Of(floor.ThermalDoubling)} without it";
        else if (dark?.DoublingTemperature is not null)
            yield return $"doubling every {QuantityText.Of(dark.DoublingTemperature)}";
    }

    private static string FloorWarning(DarkCurrentProfile? dark) =>
        dark is not null && DarkFloor.Find(dark) is { IsLarge: true } floor
            ? $"Light leaks in, or the sensor glows: {QuantityText.Number(100 * floor.Share, 2)} % of the dark "
                + $"current{At(dark.ReferenceTemperature)} does not fall with temperature. "
            : "";

    private static string? Nights(IReadOnlyList<DarkNight> nights)
    {
        Measurement[] rates =
        [
            .. nights.Select(n => n.TypicalRate ?? n.RateFromVariance).OfType<Measurement>().OrderBy(r => r.Value),
        ];
        return rates.Length switch
        {
            0 => null,
            1 => $"dark current {QuantityText.Of(rates[0])} in a night of unknown sensor temperature",
            _ => $"dark current {QuantityText.Of(rates[0])} to {QuantityText.Of(rates[^1])} over {rates.Length} "
                + $"{(nights.Any(n => n.AboveColdest is not null) ? "groups of darks" : "nights")} of unknown sensor temperature",
        };
    }

    /// <summary>Which of the four quantities that a characterisation is asked for are missing, in words.</summary>
    /// <param name="mode">A mode.</param>
    public static IReadOnlyList<string> Missing(ModeProfile mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        // a quantity given in ADU in the sentence is not missing altogether
        (string Name, Measurement? Quantity)[] asked =
        [
            (mode.ReadNoiseAdu is null ? "read noise" : "read noise in electrons", mode.ReadNoise),
            ("gain", mode.Gain),
            (
                mode.DarkCurrentAdu?.RateAtReference is null && (mode.Gain is not null || mode.DarkNights.Count == 0)
                    ? "dark current"
                    : "dark current in electrons",
                mode.DarkCurrent?.RateAtReference
            ),
            ("doubling temperature", (mode.DarkCurrent ?? mode.DarkCurrentAdu)?.DoublingTemperature),
        ];
        return [.. asked.Where(quantity => quantity.Quantity is null).Select(quantity => quantity.Name)];
    }

    private static string Carried(DarkCurrentProfile dark) =>
        dark.CarriedFrom is { } other ? $" (carried over from {ModeLabel.Text(other)})" : "";

    private static string At(double? temperature) =>
        temperature is { } celsius ? $" at {QuantityText.Number(celsius)} °C" : "";
}
