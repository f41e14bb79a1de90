using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Decisions;

/// <summary>Frame sets as a survey would form them.</summary>
internal static class Sets
{
    public static FrameSet Of(
        FrameKind kind,
        int frames,
        double? exposure,
        double? celsius,
        double drift = 0,
        double gain = 100,
        int width = 3000,
        string? camera = "Tarn-9M"
    )
    {
        var settings = new ModeSettings { Gain = gain, Offset = 30 };
        return new FrameSet
        {
            Kind = kind,
            Settings = settings,
            Width = width,
            Height = 3000,
            ExposureSeconds = exposure,
            TemperatureCelsius = celsius,
            Frames =
            [
                .. Enumerable
                    .Range(0, frames)
                    .Select(i => new Frame
                    {
                        Path = $"{kind}_{i}.fits",
                        Name = $"{kind}_{i}.fits",
                        Kind = kind,
                        ExposureSeconds = exposure,
                        Settings = settings,
                        Camera = camera,
                        Width = width,
                        Height = 3000,
                        TemperatureCelsius = celsius + drift * (frames > 1 ? (double)i / (frames - 1) - 0.5 : 0),
                    }),
            ],
        };
    }

    public static Inventory Inventory(params FrameSet[] sets) =>
        new()
        {
            Frames = [.. sets.SelectMany(s => s.Frames)],
            Sets = sets,
            Rejected = [],
            Findings = [],
        };
}
