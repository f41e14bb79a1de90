using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Raw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Tests.Frames;

/// <summary>A temporary folder of tiny DNG files.</summary>
internal sealed class RawFolder : IDisposable
{
    /// <summary>What a well-behaved camera says of a dark.</summary>
    public static RawFacts Dark { get; } =
        new()
        {
            Camera = "Fell-24C",
            SerialNumber = "24-1007",
            ExposureSeconds = 120,
            Iso = 800,
            Time = new RawTime(new DateTime(2031, 10, 14, 22, 15, 30, 250), TimeSpan.FromHours(2)),
            Temperature = new RawTemperature(17, 1, RawTemperaturePlace.Body, "Camera Temperature"),
        };

    public string Path { get; } = Directory.CreateTempSubdirectory("raw-").FullName;

    public string Add(string name, RawFacts facts, DngForm? form = null, Func<DngFrame, DngFrame>? change = null)
    {
        var frame = new DngFrame
        {
            Width = 6,
            Height = 4,
            Samples = Enumerable.Range(0, 24).Select(i => (ushort)(500 + (7 * i % 11))).ToArray(),
            BitsPerSample = 12,
            ColourFilter = new RawColourFilter(RawColour.Green, RawColour.Red, RawColour.Blue, RawColour.Green),
            Facts = facts,
        };
        string path = Full(name);
        DngWriter.Write(path, change?.Invoke(frame) ?? frame, form);
        return path;
    }

    public string Full(string name)
    {
        string path = System.IO.Path.Combine(Path, name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        return path;
    }

    public Inventory Read(InventoryOptions? options = null) =>
        FrameInventory.Read([Path], options ?? new InventoryOptions());

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
