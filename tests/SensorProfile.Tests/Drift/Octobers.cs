using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Drift.Archive;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Files;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Drift;

/// <summary>Nights of the demo camera, characterised from raw frames, each once.</summary>
public sealed class Octobers : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("octobers-").FullName;
    private readonly Dictionary<(int Year, int Night, double Reference), ProfileOnDisk> measured = [];

    public void Dispose() => Directory.Delete(folder, true);

    internal ProfileOnDisk Of(int year, int night = 0, double reference = -10)
    {
        if (!measured.TryGetValue((year, night, reference), out ProfileOnDisk? profile))
            measured[(year, night, reference)] = profile = Measure(year, night, reference);
        return profile;
    }

    private ProfileOnDisk Measure(int year, int night, double reference)
    {
        CameraDescription camera = DemoCameras.Tarn9M(year) with { Shots = Shots() };
        string home = Path.Combine(folder, FormattableString.Invariant($"year-{year}-{night}-{reference}")),
            frames = Path.Combine(home, "frames"),
            maps = Path.Combine(home, "maps");
        Simulator.Write(camera, frames, (ulong)(100 + year + night), new SimulationOptions { WriteTruth = false });
        Inventory inventory = FrameInventory.Read([frames], new InventoryOptions());
        CharacterisationResult result = Characteriser.Run(
            inventory,
            new CharacterisationOptions { ReferenceTemperature = reference }
        );
        Directory.CreateDirectory(maps);
        ProfileFile.Write(Path.Combine(home, "profile.json"), result.Profile);
        WriteMaps(maps, result.Maps[0], reference);
        Directory.Delete(frames, true);
        return ProfileOnDisk.Read(home);
    }

    private static Shot[] Shots() =>
        [
            new Shot
            {
                Kind = FrameKind.Bias,
                Temperature = -10,
                Count = 8,
            },
            .. Enumerable
                .Range(1, 7)
                .Select(i => new Shot
                {
                    Kind = FrameKind.Flat,
                    Temperature = -10,
                    Exposure = i,
                    Count = 2,
                    Level = 8000 * i,
                }),
            .. from t in (double[])[5, -2, -10]
            from s in (double[])[30, 120, 300]
            select new Shot
            {
                Kind = FrameKind.Dark,
                Temperature = t,
                Exposure = s,
                Count = s == 300 ? 3 : 2,
            },
        ];

    private static void WriteMaps(string folder, ModeMaps maps, double reference)
    {
        Write("dark-rate.fits", maps.DarkRate!, FitsCard.Of("REFTEMP", reference));
        Write("dark-rate-uncertainty.fits", maps.DarkRateUncertainty!);
        if (maps.DoublingMap() is { } doubling)
            Write("doubling.fits", doubling);
        if (maps.Defects is { } defects)
            Write("defects.fits", defects, FitsCard.Of("DEFFLICK", 64, "bit of pixels that flicker"));

        void Write<T>(string name, T[] pixels, params FitsCard[] cards)
            where T : unmanaged =>
            FitsWriter.Write(
                Path.Combine(folder, name),
                new FitsImage<T>(maps.Width, maps.Height, pixels, cards),
                durable: false
            );
    }
}
