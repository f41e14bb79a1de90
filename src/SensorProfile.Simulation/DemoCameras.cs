using System.Text;

namespace SensorProfile.Simulation;

/// <summary>The invented cameras of the demo, built in; <c>demo-data/</c> holds the same text.</summary>
public static class DemoCameras
{
    /// <summary>A 0.3-megapixel window of the "Tarn-9M", cooled monochrome, on one of its October nights.</summary>
    /// <param name="years">Age: 0, 1, 2, 3 … years give the club's yearly characterisations.</param>
    public static CameraDescription Tarn9M(double years = 0) => Load("tarn-9m.json").Age(years);

    /// <summary>A window of the "Fell-24C", uncooled colour, over nights of different temperatures.</summary>
    public static CameraDescription Fell24C() => Load("fell-24c.json");

    private static CameraDescription Load(string name)
    {
        using Stream stream = typeof(DemoCameras).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return CameraDescription.Parse(reader.ReadToEnd(), name);
    }
}
