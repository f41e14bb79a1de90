using SensorProfile.FixedPattern.Cells;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Tests.Physics;

/// <summary>The numbers of a profile against the truth of the simulated sensor, pixel by pixel.</summary>
internal sealed class ProfileCoverage(CameraDescription camera, SimulationTruth truth, Sensor sensor)
{
    private const double MapSeconds = 300;

    internal IEnumerable<CoverageRow> Rows(ModeProfile mode)
    {
        yield return new("bias level", mode.BiasLevel, truth.BiasLevel);
        yield return new("read noise, e-", mode.ReadNoise, truth.ReadNoiseRms);
        yield return new("read noise, ADU", mode.ReadNoiseAdu, truth.ReadNoiseAdu);
        yield return new("gain", mode.Gain, truth.Gain);
        yield return new("saturation level", mode.SaturationLevel, truth.SaturationLevel);
        yield return new("full well", mode.FullWell, truth.FullWell);
        yield return new("dynamic range", mode.DynamicRange, truth.DynamicRange ?? double.NaN);
        yield return new("linearity error", mode.LinearityError, truth.LinearityError);
        yield return new("response nonuniformity", mode.ResponseNonuniformity, truth.ResponseNonuniformity);
        foreach (CoverageRow row in Darks(mode.DarkCurrent!))
            yield return row;
        foreach (CoverageRow row in Pattern(mode.FixedPattern!))
            yield return row;
    }

    private IEnumerable<CoverageRow> Darks(DarkCurrentProfile dark)
    {
        foreach (DarkCurrentPoint point in dark.Points)
        {
            TrueDarkPoint real = truth.DarkCurrent!.Points.MinBy(p => Math.Abs(p.Temperature - point.Temperature))!;
            yield return new("typical rate at a temperature", point.TypicalRate, real.TypicalRate);
            yield return new("mean rate at a temperature", point.MeanRate, real.MeanRate);
        }
        if (dark.ReferenceTemperature is not double reference)
            yield break;
        yield return new("typical rate at the reference", dark.RateAtReference, Typical(reference));
        yield return new(
            "doubling temperature",
            dark.DoublingTemperature,
            4 * Math.Log(2) / Math.Log(Typical(reference + 2) / Typical(reference - 2))
        );
    }

    private IEnumerable<CoverageRow> Pattern(FixedPatternProfile pattern)
    {
        double reference = pattern.ReferenceTemperature ?? double.NaN;
        if (double.IsNaN(reference))
            yield break;
        float[] all = TrueMaps.DarkRate(sensor, reference, MapSeconds),
            glow = TrueMaps.Glow(sensor, reference, MapSeconds),
            thermal = [.. all.Zip(glow, (a, g) => a - g)];
        foreach (RateQuantile quantile in pattern.RateQuantiles.Where(q => q.Share < 0.9995))
            yield return new($"rate, {100 * quantile.Share:0.#} % rank", quantile.Rate, At(all, quantile.Share));
        foreach (RateQuantile quantile in pattern.ThermalQuantiles.Where(q => q.Share < 0.9995))
            yield return new(
                $"rate without glow, {100 * quantile.Share:0.#} % rank",
                quantile.Rate,
                At(thermal, quantile.Share)
            );
        if (camera.Glow.Count == 1 && pattern.Glow.Count > 0)
        {
            GlowRegion region = pattern.Glow[0];
            yield return new("glow, peak", region.Peak, glow.Max());
            yield return new("glow, total", region.Total, glow.Sum(g => (double)g));
            yield return new("glow, exponent of the exposure", region.ExposureExponent, 1);
            foreach (GlowRate rate in region.Rates)
                yield return new(
                    "glow, peak at a temperature",
                    rate.Rate,
                    BrightestCell(TrueMaps.Glow(sensor, rate.Temperature, MapSeconds))
                );
        }
        float[] doubling = TrueMaps.Doubling(sensor, reference, MapSeconds);
        foreach (DoublingByRate law in pattern.DoublingByRate.Where(_ => camera.Glow.Count == 0))
        {
            float[] those =
            [
                .. Enumerable
                    .Range(0, all.Length)
                    .Where(i => thermal[i] >= law.RateFrom && thermal[i] < law.RateTo && !float.IsNaN(doubling[i]))
                    .Select(i => doubling[i]),
            ];
            if (those.Length >= 20)
                yield return new(
                    "doubling of a class of rates",
                    law.Doubling,
                    At(those, 0.5),
                    1.2533 * Deviation(those) / Math.Sqrt(those.Length)
                );
        }
        if (pattern.Structure is { } structure)
            yield return new(
                "dark structure, pixel",
                structure.Pixel,
                camera.Gain * Deviation(TrueMaps.BiasLevel(sensor))
            );
        foreach (HotPixelTemperature reading in pattern.Thermometer)
            yield return new("thermometer, difference", reading.Difference, 0);
        if (pattern.BlackLevel is { } black)
        {
            yield return new("black level, jitter", black.Jitter, camera.Pedestal.Jitter);
            yield return new("black level, drift per degree", black.DriftPerDegree, 0);
        }
    }

    /// <summary>Largest mean of a cell of the grid in which glow is looked for.</summary>
    private double BrightestCell(float[] glow)
    {
        int size = CellGrid.For(camera.Width, camera.Height).Size;
        return Enumerable
            .Range(0, glow.Length)
            .GroupBy(i => (i / camera.Width / size, i % camera.Width / size), i => glow[i])
            .Max(cell => cell.Average(g => (double)g));
    }

    private double Typical(double celsius) => At(TrueMaps.DarkRate(sensor, celsius, MapSeconds), 0.5);

    private static double At(float[] values, double share)
    {
        float[] sorted = [.. values.Order()];
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return below + 1 < sorted.Length
            ? sorted[below] + (place - below) * (sorted[below + 1] - sorted[below])
            : sorted[below];
    }

    private static double Deviation(float[] values)
    {
        double mean = values.Average(v => (double)v);
        return Math.Sqrt(values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
