using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting;

/// <summary>
/// The sentence that stands at the head of a report and of the command's answer: the numbers one acts on.
/// </summary>
internal static class Headline
{
    /// <summary>The sentence for a profile: that of its first mode, and how many others there are.</summary>
    /// <param name="profile">A profile.</param>
    public static string Sentence(CameraProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        if (profile.Modes.Count == 0)
            return "Nothing could be measured from these frames.";
        string first = Sentence(profile.Modes[0]);
        if (profile.Modes.Count == 1)
            return first;
        string others =
            profile.Modes.Count == 2
                ? "Another setting was measured too."
                : $"{profile.Modes.Count - 1} other settings were measured too.";
        return $"At {ModeLabel.Text(profile.Modes[0].Settings)}: {char.ToLowerInvariant(first[0])}{first[1..]} {others}";
    }

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
        DarkCurrentProfile? dark = mode.DarkCurrent;
        if (dark?.RateAtReference is not null)
            parts.Add($"dark current {QuantityText.Of(dark.RateAtReference)}{At(dark.ReferenceTemperature)}");
        if (dark?.DoublingTemperature is not null)
            parts.Add($"doubling every {QuantityText.Of(dark.DoublingTemperature)}");
        if (parts.Count == 0)
            return "None of read noise, gain and dark current could be measured.";
        string sentence = string.Join(", ", parts);
        return $"{char.ToUpperInvariant(sentence[0])}{sentence[1..]}.";
    }

    /// <summary>Which of the four quantities that a characterisation is asked for are missing, in words.</summary>
    /// <param name="mode">A mode.</param>
    public static IReadOnlyList<string> Missing(ModeProfile mode)
    {
        ArgumentNullException.ThrowIfNull(mode);
        (string Name, Measurement? Quantity)[] asked =
        [
            ("read noise", mode.ReadNoise),
            ("gain", mode.Gain),
            ("dark current", mode.DarkCurrent?.RateAtReference),
            ("doubling temperature", mode.DarkCurrent?.DoublingTemperature),
        ];
        return [.. asked.Where(quantity => quantity.Quantity is null).Select(quantity => quantity.Name)];
    }

    private static string At(double? temperature) =>
        temperature is { } celsius ? $" at {QuantityText.Number(celsius)} °C" : "";
}
