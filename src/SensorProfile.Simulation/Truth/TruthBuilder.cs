using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Truth;

/// <summary>Collects the truth of a night from its sensor and frames.</summary>
internal static class TruthBuilder
{
    // only matters for glow that is not proportional to the exposure
    private const double MapExposureSeconds = 300;

    /// <summary>Builds the truth.</summary>
    public static SimulationTruth Build(SimulatedNight night, string filePrefix)
    {
        Sensor sensor = night.Sensor;
        CameraDescription aged = sensor.Camera;
        (double fullWell, double saturation, string by) = Saturation(sensor);
        double noise = ReadNoiseRms(sensor);
        return new SimulationTruth
        {
            Seed = night.Seed,
            Serial = sensor.Serial,
            Camera = night.Camera,
            Gain = aged.Gain,
            ReadNoise = aged.ReadNoise,
            ReadNoiseRms = noise,
            ReadNoiseAdu = noise / aged.Gain,
            BiasLevel = sensor.BiasLevel.Length > 0 ? Mean(sensor.BiasLevel) : aged.BiasLevel,
            FullWell = fullWell,
            SaturationLevel = saturation,
            SaturatedBy = by,
            DynamicRange = noise > 0 ? Math.Log2(fullWell / noise) : null,
            ResponseNonuniformity = 100 * aged.ResponseNonuniformity,
            LinearityError = TrueLinearity.ErrorPercent(sensor, fullWell),
            BrighterFatterPerAdu = aged.BrighterFatter * aged.Gain,
            DarkCurrent = aged.DarkCurrent is null ? null : DarkCurrent(sensor, night.Frames),
            HotPixels = HotPixels(sensor),
            TelegraphPixels = TelegraphPixels(sensor),
            DeadPixels = [.. sensor.Dead.Select(Place)],
            ColdPixels = [.. sensor.Cold.Select(Place)],
            HotClusters =
            [
                .. sensor.Clusters.Select(c => new TrueCluster([.. c.Select(Place)], aged.HotClusters.Rate)),
            ],
            BadColumns = [.. sensor.BadLines.Where(l => !l.IsRow).Select(l => new TruePlace(l.Line + 1, l.From + 1))],
            BadRows = [.. sensor.BadLines.Where(l => l.IsRow).Select(l => new TruePlace(l.From + 1, l.Line + 1))],
            Glow = [.. aged.Glow.Select((g, i) => Glow(sensor, g, i))],
            Frames = [.. night.Frames.Select(f => Frame(f, filePrefix))],
        };
        TruePlace Place(int index) => new(index % aged.Width + 1, index / aged.Width + 1);
    }

    /// <summary>Exposure at which the rate maps hold, s.</summary>
    public static double MapExposure => MapExposureSeconds;

    /// <summary>
    /// Where the response ends: without a full well, or with one beyond the top code, the converter saturates first.
    /// </summary>
    private static (double FullWell, double Level, string By) Saturation(Sensor sensor)
    {
        CameraDescription camera = sensor.Camera;
        double bend = camera.Nonlinearity / sensor.FullScaleElectrons;
        double range = (sensor.TopLevel - camera.BiasLevel) * camera.Gain;
        if (camera.FullWell is { } well && well * (1 - bend * well) <= range)
        {
            return (well, camera.BiasLevel + well * (1 - bend * well) / camera.Gain, "pixel");
        }
        // The smaller root of N·(1 − bend·N) = range, in a form that stays valid for bend → 0.
        double electrons = 2 * range / (1 + Math.Sqrt(Math.Max(0, 1 - 4 * bend * range)));
        return (electrons, sensor.TopLevel, "adc");
    }

    private static TrueDarkCurrent DarkCurrent(Sensor sensor, IReadOnlyList<SimulatedFrame> frames)
    {
        DarkCurrentParameters dark = sensor.Dark;
        double offset = sensor.Camera.Thermometer.ProbeOffset;
        double Ordinary(double die) => dark.RateAtReference * RelativeDarkCurrent.Factor(dark, die) + dark.Floor;
        TrueDarkPoint Point(double target)
        {
            float[] rates = TrueMaps.DarkRate(sensor, target - offset, MapExposureSeconds);
            double mean = Mean(rates);
            Array.Sort(rates);
            return new TrueDarkPoint
            {
                Temperature = target,
                DieTemperature = target - offset,
                TypicalRate = 0.5 * ((double)rates[(rates.Length - 1) / 2] + rates[rates.Length / 2]),
                MeanRate = mean,
                OrdinaryRate = Ordinary(target - offset),
                DoublingTemperature = RelativeDarkCurrent.Doubling(dark, target - offset),
            };
        }
        return new TrueDarkCurrent
        {
            ReferenceTemperature = dark.ReferenceTemperature,
            RateAtReference = Ordinary(dark.ReferenceTemperature),
            RateAtReferenceReading = Ordinary(dark.ReferenceTemperature - offset),
            DoublingTemperature = RelativeDarkCurrent.Doubling(dark, dark.ReferenceTemperature),
            MapExposure = MapExposureSeconds,
            Points =
            [
                .. frames
                    .Where(f => f.Kind is FrameKind.Dark or FrameKind.Light)
                    .Select(f => f.TargetCelsius)
                    .Distinct()
                    .Order()
                    .Select(Point),
            ],
        };
    }

    private static TrueHotPixel[] HotPixels(Sensor sensor)
    {
        int width = sensor.Camera.Width;
        double doubling = RelativeDarkCurrent.Doubling(sensor.Dark, sensor.Dark.ReferenceTemperature);
        var pixels = new TrueHotPixel[sensor.Hot.All.Length];
        for (int i = 0; i < pixels.Length; i++)
        {
            HotPixel hot = sensor.Hot.All[i];
            pixels[i] = new TrueHotPixel(
                hot.Index % width + 1,
                hot.Index / width + 1,
                hot.Rate,
                hot.Level?.Doubling(sensor.Dark.ReferenceTemperature, sensor.Dark.ReferenceTemperature)
                    ?? doubling / hot.Activation,
                hot.BornYears
            )
            {
                Energy = hot.Level?.Energy,
                DiffusionShare = hot.Level?.DiffusionShare,
            };
        }
        return pixels;
    }

    private static TrueTelegraphPixel[] TelegraphPixels(Sensor sensor)
    {
        int width = sensor.Camera.Width;
        var pixels = new TrueTelegraphPixel[sensor.Telegraph.All.Length];
        for (int i = 0; i < pixels.Length; i++)
        {
            TelegraphPixel p = sensor.Telegraph.All[i];
            pixels[i] = new TrueTelegraphPixel(
                p.Index % width + 1,
                p.Index / width + 1,
                p.Amplitude,
                p.Rate,
                p.DwellHigh,
                p.DwellLow
            )
            {
                RateEnergy = p.RateEnergy,
                DwellEnergy = p.RateEnergy is null ? null : p.DwellEnergy,
            };
        }
        return pixels;
    }

    private static TrueGlow Glow(Sensor sensor, Glow glow, int number)
    {
        float[] shape = sensor.GlowShapes[number];
        int peak = Array.IndexOf(shape, shape.Max());
        double reference = sensor.Dark.ReferenceTemperature;
        double rate =
            Sensors.GlowMap.PeakElectrons(glow, MapExposureSeconds, reference, reference) / MapExposureSeconds;
        return new TrueGlow
        {
            Shape = glow.Shape,
            X = peak % sensor.Camera.Width + 1,
            Y = peak / sensor.Camera.Width + 1,
            Peak = rate * shape[peak],
            Total = rate * sensor.GlowSums[number],
            ExposureExponent = glow.ExposureExponent,
            DoublingTemperature = glow.DoublingTemperature,
            ActivationEnergy = glow.ActivationEnergy,
            WarmUp = glow.WarmUp,
        };
    }

    private static TrueFrame Frame(SimulatedFrame frame, string filePrefix) =>
        new()
        {
            File = filePrefix + frame.FileName,
            Kind = frame.Kind,
            Exposure = frame.ExposureSeconds,
            Temperature = frame.ReportedCelsius,
            DieTemperature = frame.DieCelsius,
            StartUtc = frame.StartUtc,
            LightElectrons = frame.LightElectrons,
            LeakElectrons = frame.LeakElectrons,
            PersistenceElectrons = frame.PersistenceElectrons > 0 ? frame.PersistenceElectrons : null,
            PedestalOffset = frame.PedestalOffset,
            TornFromRow = frame.TornFromRow + 1,
            FileSpoilt = frame.Faults.Any(f =>
                f.CutBytes > 0 || f.OmitKeywords.Count > 0 || f.ReplaceKeywords.Count > 0
            ),
        };

    private static double ReadNoiseRms(Sensor sensor)
    {
        double sum = 0;
        foreach (float noise in sensor.ReadNoise)
        {
            sum += (double)noise * noise;
        }
        return sensor.ReadNoise.Length > 0 ? Math.Sqrt(sum / sensor.ReadNoise.Length) : sensor.Camera.ReadNoise;
    }

    private static double Mean(float[] values)
    {
        double sum = 0;
        foreach (float value in values)
        {
            sum += value;
        }
        return sum / values.Length;
    }
}
