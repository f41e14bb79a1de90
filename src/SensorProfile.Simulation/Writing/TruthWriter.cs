using System.Text.Json;
using SensorProfile.Fits;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Writing;

/// <summary>Writes the truth maps and, last, <c>truth.json</c>.</summary>
internal static class TruthWriter
{
    /// <summary>Writes everything into the folder of the frames.</summary>
    public static void Write(
        string folder,
        SimulatedNight night,
        SimulationTruth truth,
        SimulationOptions options,
        CancellationToken cancellation
    )
    {
        Sensor sensor = night.Sensor;
        double reference = sensor.Dark.ReferenceTemperature;
        double exposure = TruthBuilder.MapExposure;
        TrueMapFiles files = truth.Maps;
        Directory.CreateDirectory(Path.Combine(folder, "truth"));
        Map(files.DarkRate, "e-/s", () => TrueMaps.DarkRate(sensor, reference, exposure));
        Map(files.Doubling, "deg_C", () => TrueMaps.Doubling(sensor, reference, exposure));
        Map(files.Glow, "e-/s", () => TrueMaps.Glow(sensor, reference, exposure));
        Map(files.ReadNoise, "e-", () => TrueMaps.ReadNoise(sensor));
        Map(files.BiasLevel, "ADU", () => TrueMaps.BiasLevel(sensor));
        Map(files.Response, "", () => sensor.Response);
        Map(files.Defects, "", () => TrueMaps.Defects(sensor));
        string json = Path.Combine(folder, "truth.json");
        if (!options.Overwrite && File.Exists(json))
        {
            throw new IOException($"{json} exists and was not replaced.");
        }
        AtomicFile.Write(json, stream =>
            JsonSerializer.Serialize(stream, truth, SimulationJson.Default.SimulationTruth)
        );

        void Map<T>(string file, string unit, Func<T[]> pixels)
            where T : unmanaged
        {
            cancellation.ThrowIfCancellationRequested();
            FitsCard[] cards =
            [
                FitsCard.Of("INSTRUME", sensor.Camera.Name, "synthetic camera"),
                FitsCard.Of("BUNIT", unit),
                FitsCard.Of("REFTEMP", reference, "[degC] of the die, where rates depend on it"),
                FitsCard.Of("MAPEXP", exposure, "[s] where glow is not in proportion to it"),
                FitsCard.OfComment("True values of a simulated sensor; not a frame."),
            ];
            var image = new FitsImage<T>(sensor.Camera.Width, sensor.Camera.Height, pixels(), cards);
            FitsWriter.Write(Path.Combine(folder, file), image, options.Overwrite, durable: false);
        }
    }
}
