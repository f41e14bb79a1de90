using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Truth;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>
/// The stated uncertainties are true: over many small random cameras the 95 % intervals hold the truth in 95 % of the
/// cases, within three counting errors; 500 cameras in the long suite also tell uncertainties that are too wide.
/// </summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    private static readonly int CameraCount = LongRuns.Of(100, 500);

    [Fact]
    public void NinetyFivePercentIntervalsHoldTheTruth()
    {
        var z = new Dictionary<string, double[]>
        {
            ["gain"] = new double[CameraCount],
            ["read noise"] = new double[CameraCount],
            ["dark rate"] = new double[CameraCount],
            ["doubling temperature"] = new double[CameraCount],
        };
        Parallel.For(0, CameraCount, i =>
        {
            using var session = new SimulatedSession(RandomCamera(i), (ulong)i + 1, threads: 1);
            ModeProfile mode = session.Characterise(threads: 1).Profile.Modes[0];
            DarkCurrentProfile dark = mode.DarkCurrent!;
            TrueDarkPoint truth = session.Truth.DarkCurrent!.Points.MinBy(p =>
                Math.Abs(p.Temperature - dark.ReferenceTemperature!.Value)
            )!;
            z["gain"][i] = Z(mode.Gain, session.Truth.Gain);
            z["read noise"][i] = Z(mode.ReadNoise, session.Truth.ReadNoiseRms);
            z["dark rate"][i] = Z(dark.RateAtReference, truth.TypicalRate);
            z["doubling temperature"][i] = Z(dark.DoublingTemperature, truth.DoublingTemperature);
        });
        var outside = new List<string>();
        foreach ((string quantity, double[] values) in z)
        {
            double[] measured = [.. values.Where(double.IsFinite)];
            double held = 100.0 * measured.Count(v => Math.Abs(v) < 1.96) / measured.Length;
            output.WriteLine(
                $"{quantity, -22} {held:F1} % of {measured.Length} intervals hold the truth; mean z "
                    + $"{measured.Average():F2}, largest {measured.Max(Math.Abs):F1}"
            );
            Assert.True(
                measured.Length >= 0.97 * CameraCount,
                $"{quantity} was measured on {measured.Length} of {CameraCount} cameras only"
            );
            // Three counting errors: of 500 at 95 % 2.9 %, of 100 6.5 %.
            double error = 3 * Math.Sqrt(95.0 * 5 / CameraCount);
            if (Math.Abs(held - 95) > error)
                outside.Add($"{quantity}: {held:F1} %");
        }
        Assert.Empty(outside);
    }

    private static double Z(Measurement? measured, double truth) =>
        measured is null ? double.NaN : (measured.Value - truth) / measured.StandardUncertainty;

    private static CameraDescription RandomCamera(int number)
    {
        var random = new Random(1000 + number);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        double gain = Between(0.4, 2),
            well = Between(12000, 55000 * Math.Min(1, gain));
        return new CameraDescription
        {
            Width = 64,
            Height = 64,
            Gain = gain,
            ReadNoise = Between(1, 5) * Math.Max(1, gain),
            FullWell = well,
            BiasLevel = 500,
            BiasPattern = new BiasPattern { Pixel = Between(0.5, 2) },
            Pedestal = new Pedestal { Jitter = Between(0, 0.3) },
            BrighterFatter = -Between(0, 1e-6),
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = Between(0.05, 0.3),
                ReferenceTemperature = -5,
                DoublingTemperature = Between(5, 8),
            },
            DarkNonuniformity = Between(0, 0.15),
            HotPixels = new HotPixels
            {
                Share = Between(0, 0.003),
                Distribution = new HotPixelDistribution { Minimum = 1, Maximum = 20 },
            },
            ResponseNonuniformity = 0.006,
            Shots =
            [
                new() { Kind = FrameKind.Bias, Count = 8 },
                .. Enumerable
                    .Range(1, 9)
                    .Select(level => new Shot
                    {
                        Kind = FrameKind.Flat,
                        Exposure = level,
                        Level = 0.13 * level * well,
                        Count = 2,
                    }),
                .. new[] { -15.0, -10, -5, 0, 5 }.SelectMany(t =>
                    new[] { 10.0, 60, 150, 300 }.Select(e => new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = e,
                        Temperature = t,
                        Count = 3,
                    })
                ),
            ],
        };
    }
}
