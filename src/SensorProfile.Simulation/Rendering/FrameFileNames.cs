using System.Globalization;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Rendering;

/// <summary>File names such as <c>dark_-10C_300s_001.fits</c>, numbered per kind, temperature and exposure.</summary>
/// <param name="files">File format, which determines the extension.</param>
internal sealed class FrameFileNames(FrameFiles files)
{
    private readonly Dictionary<string, int> _used = [];

    /// <summary>The next name of the frame's kind.</summary>
    public string Next(FrameKind kind, double celsius, double exposure)
    {
        string word = kind == FrameKind.DarkFlat ? "darkflat" : kind.ToString().ToLowerInvariant();
        string seconds =
            kind == FrameKind.Bias ? "" : string.Create(CultureInfo.InvariantCulture, $"_{exposure:0.######}s");
        string stem = string.Create(CultureInfo.InvariantCulture, $"{word}_{celsius:0.##}C{seconds}");
        int number = _used[stem] = _used.GetValueOrDefault(stem) + 1;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{stem}_{number:000}.{(files == FrameFiles.Fits ? "fits" : "dng")}"
        );
    }
}
