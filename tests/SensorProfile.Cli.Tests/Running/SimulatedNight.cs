using SensorProfile.Simulation;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>
/// Small nights of the Tarn-9M for tests: written once per folder, with every kind of frame that a full profile needs.
/// </summary>
internal static class SimulatedNight
{
    /// <summary>Three temperatures with three exposures each, bias, and flats at eight levels.</summary>
    public const string Full = """
        { "name": "Tarn-9M", "width": 160, "height": 120, "gain": 0.8, "readNoise": 1.6, "fullWell": 40000,
          "darkCurrent": { "rateAtReference": 0.2, "referenceTemperature": -10, "doublingTemperature": 6 },
          "thermometer": { "wobble": 0.05 },
          "shots": [
            { "kind": "bias", "exposure": 0.001, "temperature": -10, "count": 10 },
            { "kind": "dark", "exposure": 30, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 120, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 30, "temperature": 0, "count": 3 },
            { "kind": "dark", "exposure": 120, "temperature": 0, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": 0, "count": 3 },
            { "kind": "dark", "exposure": 30, "temperature": 10, "count": 3 },
            { "kind": "dark", "exposure": 120, "temperature": 10, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": 10, "count": 3 },
            { "kind": "flat", "exposure": 0.5, "temperature": -10, "count": 2, "level": 1500 },
            { "kind": "flat", "exposure": 1, "temperature": -10, "count": 2, "level": 3000 },
            { "kind": "flat", "exposure": 2, "temperature": -10, "count": 2, "level": 6000 },
            { "kind": "flat", "exposure": 4, "temperature": -10, "count": 2, "level": 12000 },
            { "kind": "flat", "exposure": 6, "temperature": -10, "count": 2, "level": 18000 },
            { "kind": "flat", "exposure": 8, "temperature": -10, "count": 2, "level": 24000 },
            { "kind": "flat", "exposure": 11, "temperature": -10, "count": 2, "level": 33000 },
            { "kind": "flat", "exposure": 16, "temperature": -10, "count": 2, "level": 48000 } ] }
        """;

    /// <summary>Darks alone: no read noise, no gain.</summary>
    public const string DarksOnly = """
        { "name": "Tarn-9M", "width": 80, "height": 60, "gain": 0.8, "readNoise": 1.6,
          "darkCurrent": { "rateAtReference": 0.2, "referenceTemperature": -10, "doublingTemperature": 6 },
          "shots": [
            { "kind": "dark", "exposure": 30, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": -10, "count": 3 } ] }
        """;

    public static void Write(string folder, string camera, ulong seed = 1) =>
        Simulator.Write(CameraDescription.Parse(camera), folder, seed);
}
