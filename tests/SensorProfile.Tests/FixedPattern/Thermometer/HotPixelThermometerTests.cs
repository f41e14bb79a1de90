using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Input;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Frames;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.FixedPattern.Thermometer;

/// <summary>
/// The hot pixels tell the die's temperature to a few hundredths of a degree, whatever the probe says.
/// </summary>
public sealed class HotPixelThermometerTests
{
    private static PatternNight Night(Simulation.Parameters.Sensor.Thermometer thermometer) =>
        new(
            PatternNight.Camera([
                new Shot { Kind = FrameKind.Bias, Count = 10 },
                .. new[] { -15.0, -10, -5 }.SelectMany(t =>
                    new[] { 60.0, 300 }.Select(e => new Shot
                    {
                        Kind = FrameKind.Dark,
                        Exposure = e,
                        Temperature = t,
                        Count = 8,
                    })
                ),
            ]) with
            {
                Width = 320,
                Height = 240,
                Thermometer = thermometer,
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Activation = 0.9,
                    ActivationSpread = 0.05,
                    Distribution = new() { Minimum = 1, Maximum = 30 },
                },
            }
        );

    [Fact]
    public void EveryFramesTemperatureIsFoundToAFewHundredthsOfADegree()
    {
        PatternNight night = Night(new Simulation.Parameters.Sensor.Thermometer { Wobble = 0.3, ReportsTarget = true });
        PatternInput input = night.Input();
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        HotPixelThermometer thermometer = HotPixelThermometer.Calibrate(input, result.Maps, result.Defects)!;
        List<double> errors = [],
            z = [];
        foreach (DarkSeries series in input.Series)
        {
            IReadOnlyList<ThermometerSet> sets = thermometer.Temperatures(series)!;
            SimulatedFrame[] True(double seconds) =>
                [
                    .. night.Night.Frames.Where(f =>
                        f.Kind == FrameKind.Dark
                        && f.TargetCelsius == series.TemperatureCelsius
                        && f.ExposureSeconds == seconds
                    ),
                ];
            // The zero point is the temperature at which the pixels had their mean brightness.
            double zero = 6.5 / 0.9 * Math.Log2(True(300).Average(f => Math.Pow(2, f.DieCelsius * 0.9 / 6.5)));
            for (int g = 0; g < sets.Count; g++)
                foreach (
                    (Measurement measured, SimulatedFrame frame) in sets[g]
                        .Frames.Zip(True(series.Exposures[g].Seconds))
                )
                {
                    errors.Add(measured.Value - (frame.DieCelsius - zero));
                    z.Add(errors[^1] / measured.StandardUncertainty);
                }
        }
        Assert.Equal(48, errors.Count);
        Assert.InRange(errors.Max(Math.Abs), 0, 0.05);
        // 48 values: 10 % for independent ones; each set shares the error of its reference
        Assert.InRange(Math.Sqrt(z.Average(v => v * v)), 0.6, 1.6);
    }

    [Fact]
    public void AProbeThatStandsStillIsFoundOut()
    {
        PatternNight night = Night(new Simulation.Parameters.Sensor.Thermometer { DriftPerHour = 1.0, StuckAt = -10 });
        PatternInput input = night.Input();
        input = input with
        {
            Series =
            [
                .. input.Series.Select(s =>
                    s with
                    {
                        Exposures =
                        [
                            .. s.Exposures.Select(e => e with { Readings = [.. e.Frames.Select(_ => (double?)-10)] }),
                        ],
                    }
                ),
            ],
        };
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        HotPixelTemperature set = result.Profile.Thermometer.Single(r =>
            r.Exposure == 300
            && r.Frames == 8
            && Math.Abs(r.Drift!.Value) > 0.3
            && ReferenceEquals(r, result.Profile.Thermometer.Last(t => t.Exposure == 300))
        );
        SimulatedFrame[] frames =
        [
            .. night.Night.Frames.Where(f =>
                f.Kind == FrameKind.Dark && f.TargetCelsius == -5 && f.ExposureSeconds == 300
            ),
        ];
        Assert.InRange(set.Drift!.Value - (frames[^1].DieCelsius - frames[0].DieCelsius), -0.05, 0.05);
        Assert.Equal(0, set.ReadingDrift!.Value, 9);
        Assert.Contains(result.Findings, f =>
            f.Code == "probe-misses-drift" && f.Message.Contains("stood still", StringComparison.Ordinal)
        );
        // who has taken the temperatures from the hot pixels is not told to take them from there
        Finding replaced = ThermometerFindings.WhereReplaced(
            result.Findings.Single(f => f.Code == "probe-misses-drift")
        );
        Assert.Equal(Severity.Note, replaced.Severity);
        Assert.EndsWith("so wait longer before the first frame.", replaced.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ASteadyNightGivesNoFinding()
    {
        PatternNight night = Night(new Simulation.Parameters.Sensor.Thermometer());
        PatternInput input = night.Input();
        input = input with
        {
            Series =
            [
                .. input.Series.Select(s =>
                    s with
                    {
                        Exposures =
                        [
                            .. s.Exposures.Select(e =>
                                e with
                                {
                                    Readings = [.. e.Frames.Select(_ => (double?)s.TemperatureCelsius)],
                                }
                            ),
                        ],
                    }
                ),
            ],
        };
        PatternResult result = PatternMeasurement.Measure(input, null)!;
        Assert.Empty(result.Findings);
        Assert.All(result.Profile.Thermometer, t =>
            Assert.InRange(Math.Abs(t.Drift!.Value), 0, 4 * t.Drift.StandardUncertainty)
        );
    }
}
