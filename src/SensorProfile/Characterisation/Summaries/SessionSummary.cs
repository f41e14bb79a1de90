using System.Text;
using SensorProfile.Frames;
using SensorProfile.Profiles.Session;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>The frames behind a profile: used, left out, and a digest that recognises the same frames again.</summary>
internal static class SessionSummary
{
    public static FramesInfo Summarise(IReadOnlyList<MeasuredMode> modes, Inventory inventory, FindingsLog log)
    {
        var frames = modes
            .SelectMany((m, i) => m.Frames.Frames.Select(f => (Mode: i, Screened: f)))
            .OrderBy(f => f.Screened.Frame.StartUtc ?? DateTimeOffset.MaxValue)
            .ThenBy(f => f.Screened.Name, StringComparer.Ordinal)
            .ToList();
        return new FramesInfo
        {
            Used = frames.Count,
            Rejected = [.. inventory.Rejected, .. log.Files],
            InputDigest = Digest(frames.Select(f => f.Screened)),
            Session =
            [
                .. frames.Select(f => new FrameSummary(
                    f.Screened.Name,
                    EnumWord.Of(f.Screened.Frame.Kind),
                    f.Screened.Frame.ExposureSeconds,
                    f.Screened.Frame.TemperatureCelsius,
                    f.Screened.Frame.StartUtc,
                    Math.Round(f.Screened.Level, 3),
                    f.Mode
                )),
            ],
        };
    }

    private static string Digest(IEnumerable<ScreenedFrame> frames)
    {
        StringBuilder text = new();
        foreach (ScreenedFrame f in frames.OrderBy(f => f.Name, StringComparer.Ordinal))
            text.Append(Invariant($"{f.Name}\n{f.Frame.Width}x{f.Frame.Height}\n{f.PixelSum}\n"));
        return Sha256.Hex(Encoding.UTF8.GetBytes(text.ToString()));
    }
}
