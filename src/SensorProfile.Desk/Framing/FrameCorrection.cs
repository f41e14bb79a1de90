using SensorProfile.Desk.Asking;
using SensorProfile.Frames;

namespace SensorProfile.Desk.Framing;

/// <summary>An inventory with a person's corrections of some of its frames.</summary>
internal static class FrameCorrection
{
    /// <summary>The kinds that a person may choose, as written in the capture table.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["bias", "dark", "flat", "dark-flat", "light"];

    public static Inventory Apply(Inventory inventory, CaptureChange change)
    {
        HashSet<string> concerned = new(change.Files, StringComparer.Ordinal),
            leftOut = new(inventory.LeftOut.Select(f => f.Name), StringComparer.Ordinal);
        bool IsUsed(Frame frame) =>
            concerned.Contains(frame.Name) && change.Use is bool use ? use : !leftOut.Contains(frame.Name);
        Frame[] frames =
        [
            .. inventory
                .Frames.Concat(inventory.LeftOut)
                .Select(f => concerned.Contains(f.Name) ? Changed(f, change) : f),
        ];
        return inventory with { Frames = [.. frames.Where(IsUsed)], LeftOut = [.. frames.Where(f => !IsUsed(f))] };
    }

    private static Frame Changed(Frame frame, CaptureChange change) =>
        frame with
        {
            Kind = change.Kind is { } word ? KindOf(word) : frame.Kind,
            TemperatureCelsius = change.TemperatureCelsius ?? frame.TemperatureCelsius,
            ExposureSeconds = change.ExposureSeconds ?? frame.ExposureSeconds,
        };

    private static FrameKind KindOf(string word) =>
        Enum.Parse<FrameKind>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true);
}
