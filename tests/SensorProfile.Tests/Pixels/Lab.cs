using System.Text.Json;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.Tests.Pixels;

/// <summary>Frames of two real cameras and reference results for them, kept outside the project.</summary>
internal sealed class Lab : IDisposable
{
    private readonly List<FrameStack> _stacks = [];

    public Lab(string folder)
    {
        Folder = TestData.Path(folder);
        using var file = File.OpenRead(Path.Combine(Folder, "expected.json"));
        Expected = JsonDocument.Parse(file).RootElement.Clone();
    }

    public string Folder { get; }

    public JsonElement Expected { get; }

    /// <summary>Position (row mod 2, column mod 2) names the channel, as in the reference results.</summary>
    public static ColourMosaic Positions { get; } = new(2, ["00", "01", "10", "11"]);

    /// <summary>Opens files, in the order of their names unless they are named one by one.</summary>
    public IReadOnlyList<IFrameSamples> Open(params IEnumerable<string> names)
    {
        var stack = FrameStack.Open([.. names.SelectMany(Files).Select(FrameOf)]);
        _stacks.Add(stack);
        Assert.Empty(stack.Refused);
        return stack.Samples;
    }

    public void Dispose() => _stacks.ForEach(stack => stack.Dispose());

    /// <summary>Asserts that a value lies in the interval in which a sound method should land.</summary>
    public static void AssertAccepted(JsonElement expected, double value)
    {
        var accept = expected.GetProperty("accept");
        Assert.InRange(value, accept[0].GetDouble(), accept[1].GetDouble());
    }

    internal static Frame FrameOf(string path)
    {
        using var file = FitsFile.Open(path);
        var image = file.FirstImage!;
        return new Frame
        {
            Path = path,
            Name = Path.GetFileName(path),
            Width = image.Width,
            Height = image.Height,
            Hdu = image.Index,
        };
    }

    private IEnumerable<string> Files(string pattern) =>
        Directory
            .GetFiles(Path.Combine(Folder, Path.GetDirectoryName(pattern)!), Path.GetFileName(pattern))
            .Order(StringComparer.Ordinal);
}
