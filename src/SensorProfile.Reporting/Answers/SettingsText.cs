using SensorProfile.Profiles.Session;

namespace SensorProfile.Reporting.Answers;

/// <summary>Camera settings in words: "gain 100, offset 30, 1x1".</summary>
internal static class SettingsText
{
    public static string Of(ModeSettings settings)
    {
        List<string> parts = [];
        if (settings.Gain is { } gain)
            parts.Add($"gain {QuantityText.Number(gain)}");
        if (settings.Offset is { } offset)
            parts.Add($"offset {QuantityText.Number(offset)}");
        if (settings.Iso is { } iso)
            parts.Add($"ISO {QuantityText.Number(iso)}");
        parts.Add(settings.Binning);
        if (settings.Readout is { } readout)
            parts.Add(readout);
        return string.Join(", ", parts);
    }
}
