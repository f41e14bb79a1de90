using SensorProfile.Fits;
using SensorProfile.Simulation;

namespace SensorProfile.Fuzz.Pixels;

/// <summary>A small night of a good camera with one to three kinds of nonsense done to it.</summary>
internal static class NonsenseNight
{
    private const string Camera = """
        { "name": "Tarn-9M", "width": 64, "height": 64, "gain": 0.8, "readNoise": 1.6, "fullWell": 40000,
          "darkCurrent": { "rateAtReference": 0.2, "referenceTemperature": -10, "doublingTemperature": 6 },
          "thermometer": { "wobble": 0.05 },
          "shots": [
            { "kind": "bias", "exposure": 0.001, "temperature": -10, "count": 5 },
            { "kind": "dark", "exposure": 30, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 120, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 30, "temperature": 0, "count": 2 },
            { "kind": "dark", "exposure": 120, "temperature": 0, "count": 2 },
            { "kind": "dark", "exposure": 300, "temperature": 0, "count": 2 },
            { "kind": "dark", "exposure": 30, "temperature": 10, "count": 2 },
            { "kind": "dark", "exposure": 120, "temperature": 10, "count": 2 },
            { "kind": "dark", "exposure": 300, "temperature": 10, "count": 2 },
            { "kind": "flat", "exposure": 0.5, "temperature": -10, "count": 2, "level": 1500 },
            { "kind": "flat", "exposure": 2, "temperature": -10, "count": 2, "level": 6000 },
            { "kind": "flat", "exposure": 6, "temperature": -10, "count": 2, "level": 18000 },
            { "kind": "flat", "exposure": 11, "temperature": -10, "count": 2, "level": 33000 },
            { "kind": "flat", "exposure": 16, "temperature": -10, "count": 2, "level": 48000 } ] }
        """;

    private static readonly Lazy<SimulatedNight> night = new(() =>
        new SimulatedNight(CameraDescription.Parse(Camera), 1)
    );
    private static readonly Lazy<ushort[][]> rendered = new(() =>
        [.. night.Value.Frames.Select(f => night.Value.Render(f))]
    );

    /// <summary>Writes the night of a seed.</summary>
    /// <returns>The kinds of nonsense in it.</returns>
    public static string Write(string folder, int seed)
    {
        var random = new Random(seed);
        ShotFrame[] frames = [.. night.Value.Frames.Select((_, i) => Good(i))];
        List<string> done = [];
        for (int i = random.Next(1, 4); i > 0; i--)
        {
            var (name, change) = PixelNonsense.All[random.Next(PixelNonsense.All.Count)];
            change(frames, random);
            done.Add(name);
        }
        Directory.CreateDirectory(folder);
        foreach (ShotFrame frame in frames.Where(f => f.Samples.Length > 0))
            FitsWriter.Write(Path.Combine(folder, frame.Name), Image(frame), durable: false);
        return string.Join(" + ", done);
    }

    private static ShotFrame Good(int index)
    {
        SimulatedFrame frame = night.Value.Frames[index];
        return new ShotFrame
        {
            Name = frame.FileName,
            Kind = frame.FileName.Split('_')[0],
            Exposure = frame.ExposureSeconds,
            Temperature = frame.ReportedCelsius,
            Width = night.Value.Camera.Width,
            Height = night.Value.Camera.Height,
            Samples = rendered.Value[index],
            Start = new DateTime(2031, 10, 14, 20, 0, 0).AddMinutes(6 * index),
        };
    }

    private static FitsImage Image(ShotFrame frame)
    {
        List<FitsCard> cards =
        [
            FitsCard.Of("INSTRUME", "Tarn-9M"),
            FitsCard.Of("IMAGETYP", frame.Kind),
            FitsCard.Of("OFFSET", 30L),
            FitsCard.Of(
                "DATE-OBS",
                frame.Start.ToString("yyyy-MM-ddTHH:mm:ss", System.Globalization.CultureInfo.InvariantCulture)
            ),
        ];
        Add("EXPTIME", frame.Exposure);
        Add("CCD-TEMP", frame.Temperature);
        Add("GAIN", frame.Gain);
        Add("BAYERPAT", frame.ColourFilter);
        if (frame.Floats is { } floats)
            return new FitsImage<float>(frame.Width, frame.Height, floats, cards);
        return frame.Signed
            ? new FitsImage<short>(frame.Width, frame.Height, frame.Samples.Select(s => (short)s).ToArray(), cards)
            : new FitsImage<ushort>(frame.Width, frame.Height, frame.Samples, cards);

        void Add(string keyword, object? value)
        {
            if (value is not null)
                cards.Add(
                    value switch
                    {
                        double number => FitsCard.Of(keyword, number),
                        long number => FitsCard.Of(keyword, number),
                        _ => FitsCard.Of(keyword, (string)value),
                    }
                );
        }
    }
}
