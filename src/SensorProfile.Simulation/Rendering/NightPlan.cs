using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Randomness;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>Schedules the shots and draws the conditions of every frame.</summary>
internal static class NightPlan
{
    private const double ReadoutSeconds = 2.5;
    private const double UsualPauseSeconds = 60;
    private const double SecondsPerDegree = 40; // 1.5 °C per minute, with the settling
    private const double DaysPerYear = 365.25;

    /// <summary>The frames in the order taken.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="seed">Seed of the night.</param>
    public static IReadOnlyList<SimulatedFrame> Plan(Sensor sensor, ulong seed)
    {
        CameraDescription camera = sensor.Camera;
        var frames = new List<SimulatedFrame>();
        var names = new FrameFileNames(camera.Files);
        double clock = 0;
        double? before = null;
        for (int shot = 0; shot < camera.Shots.Count; shot++)
        {
            Shot what = camera.Shots[shot];
            double target = what.Temperature ?? sensor.Dark.ReferenceTemperature;
            if (before is { } last)
            {
                clock += what.Pause ?? UsualPauseSeconds + SecondsPerDegree * Math.Abs(target - last);
            }
            before = target;
            double shotStart = clock;
            for (int number = 1; number <= what.Count; number++)
            {
                frames.Add(
                    Frame(
                        sensor,
                        seed,
                        names,
                        new Place(frames.Count, shot + 1, number, target, clock, clock - shotStart),
                        what
                    )
                );
                clock += what.Exposure + ReadoutSeconds;
            }
        }
        return camera.Physics?.Persistence is { Share: > 0 } law ? Persisting(frames, law) : frames;
    }

    /// <summary>Adds to each frame the charge released by traps, which light fills and time empties.</summary>
    private static List<SimulatedFrame> Persisting(List<SimulatedFrame> frames, Persistence law)
    {
        var all = new List<SimulatedFrame>(frames.Count);
        double trapped = 0; // e-, at the clock
        DateTimeOffset clock = frames.Count > 0 ? frames[0].StartUtc : default;
        foreach (SimulatedFrame frame in frames)
        {
            trapped *= Math.Exp(-(frame.StartUtc - clock).TotalSeconds / law.Decay);
            double left = trapped * Math.Exp(-frame.ExposureSeconds / law.Decay);
            all.Add(frame with { PersistenceElectrons = trapped - left });
            trapped = left + law.Share * frame.LightElectrons;
            clock = frame.StartUtc.AddSeconds(frame.ExposureSeconds);
        }
        return all;
    }

    private static SimulatedFrame Frame(Sensor sensor, ulong seed, FrameFileNames names, Place place, Shot shot)
    {
        CameraDescription camera = sensor.Camera;
        var random = RandomStream.For(seed, Purpose.Conditions, place.Index);
        double probe =
            place.Target
            + camera.Thermometer.Wobble * random.NextNormal()
            + camera.Thermometer.DriftPerHour * place.SecondsInShot / 3600;
        double die = probe - camera.Thermometer.ProbeOffset - shot.ProbeOffset;
        double jitter = random.NextNormal();
        double lamp = (1 + camera.Lamp.Drift * (place.Number - 1)) * (1 + camera.Lamp.Jitter * random.NextNormal());
        double phase = 2 * Math.PI * random.NextUniform();
        (double X, double Y) dither = (
            camera.Stars.Dither * random.NextNormal(),
            camera.Stars.Dither * random.NextNormal()
        );
        bool torn = random.NextUniform() < camera.TornFrames.Share && shot.Kind != FrameKind.Bias;
        int tornRow = random.NextIndex(camera.Height);
        IReadOnlyList<Fault> faults =
        [
            .. camera.Faults.Where(f =>
                (f.Shot ?? place.Shot) == place.Shot && (f.Frame ?? place.Number) == place.Number
            ),
        ];
        bool first = place.Number == 1;
        return new SimulatedFrame
        {
            Index = place.Index,
            Shot = place.Shot,
            NumberInShot = place.Number,
            FileName = names.Next(shot.Kind, place.Target, shot.Exposure),
            Kind = shot.Kind,
            ExposureSeconds = shot.Exposure,
            TargetCelsius = place.Target,
            DieCelsius = die,
            ReportedCelsius = Reported(camera.Thermometer, camera.Thermometer.ReportsTarget ? place.Target : probe),
            StartUtc = camera.Start.AddDays(Math.Round(camera.AgeYears * DaysPerYear)).AddSeconds(place.Seconds),
            PedestalOffset =
                PedestalOffset(sensor, jitter, place.Seconds, die) + (first ? camera.FirstFrame.Offset : 0),
            LightElectrons = shot.Kind == FrameKind.Flat ? shot.Level * Math.Max(0, lamp) : shot.Level,
            LeakElectrons = (shot.LightLeak + (camera.Physics?.LightLeak ?? 0)) * shot.Exposure,
            DarkFactor = first ? camera.FirstFrame.DarkFactor : 1,
            FlickerPhase = phase,
            Dither = dither,
            TornFromRow = faults.Select(f => f.TornFromRow - 1).FirstOrDefault(r => r is not null)
                ?? (torn ? tornRow : null),
            Faults = faults,
        };
    }

    private static double? Reported(Thermometer thermometer, double probe)
    {
        if (thermometer.Missing)
        {
            return null;
        }
        double step = thermometer.Resolution;
        return thermometer.StuckAt ?? (step > 0 ? Math.Round(Math.Round(probe / step) * step, 9) : probe);
    }

    private static double PedestalOffset(Sensor sensor, double jitter, double seconds, double die)
    {
        Pedestal pedestal = sensor.Camera.Pedestal;
        double offset =
            pedestal.Jitter * jitter
            + pedestal.DriftPerHour * seconds / 3600
            + pedestal.DriftPerDegree * (die - sensor.Dark.ReferenceTemperature);
        return pedestal.Step > 0 ? Math.Round(offset / pedestal.Step) * pedestal.Step : offset;
    }

    private readonly record struct Place(
        int Index,
        int Shot,
        int Number,
        double Target,
        double Seconds,
        double SecondsInShot
    );
}
