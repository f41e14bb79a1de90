using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.BlackLevel;

/// <summary>The black level from frames of synthetic cameras whose pedestal moves in known ways.</summary>
public sealed class BlackLevelTests(ITestOutputHelper output)
{
    private static readonly double[] temperatures = [-20, -15, -10, -5];

    [Fact]
    public void AMovingPedestalIsTakenApart()
    {
        var pedestal = new Pedestal
        {
            Jitter = 0.5,
            DriftPerHour = 1.5,
            DriftPerDegree = 0.2,
        };
        var camera = Camera(pedestal) with { FirstFrame = new FirstFrame { Offset = 2 } };
        List<double> hour = [],
            degree = [],
            first = [],
            second = [],
            jitter = [];
        for (ulong seed = 1; seed <= 12; seed++)
        {
            using var session = new SimulatedSession(camera, seed);
            CameraProfile profile = session.Characterise().Profile;
            BlackLevelProfile level = profile.Modes[0].FixedPattern!.BlackLevel!;
            hour.Add(Z(level.DriftPerHour!, 1.5));
            degree.Add(Z(level.DriftPerDegree!, 0.2));
            first.Add(Z(level.FirstFrameDifference!, 2));
            second.Add(Z(level.DriftPerSecond!, 0));
            jitter.Add(level.Jitter!.Value);
            output.WriteLine(
                $"{seed, 2}: {Text(level.DriftPerHour)} ADU/h, {Text(level.DriftPerDegree)} ADU/°C, first "
                    + $"{Text(level.FirstFrameDifference)} ADU, {Text(level.DriftPerSecond)} ADU/s, jitter "
                    + $"{Text(level.Jitter)}, sets {Text(level.SetScatter)}, smallest {Text(level.SmallestDarkCurrent)}"
            );
            Assert.Contains(profile.Findings, f => f.Code == "black-level-drift");
            Assert.Contains(profile.Findings, f => f.Code == "first-frame-differs");
        }
        // 12 nights: the mean of z has a deviation of 0.29 and 3.5 of it are 1.0; no single z beyond 4.
        foreach (List<double> z in new[] { hour, degree, first, second })
        {
            output.WriteLine(
                string.Join(' ', z.Select(v => v.ToString("F1", System.Globalization.CultureInfo.InvariantCulture)))
            );
            Assert.InRange(z.Average(), -1, 1);
            Assert.InRange(z.Max(Math.Abs), 0, 4);
        }
        // about 70 differences a night: 3 % of 0.5 for 12 nights
        Assert.InRange(jitter.Average(), 0.45, 0.55);
    }

    [Fact]
    public void ASteadyPedestalGivesNoFinding()
    {
        using var session = new SimulatedSession(Camera(new Pedestal()), 5);
        CameraProfile profile = session.Characterise().Profile;
        BlackLevelProfile level = profile.Modes[0].FixedPattern!.BlackLevel!;
        Assert.InRange(Math.Abs(Z(level.DriftPerHour!, 0)), 0, 4);
        Assert.InRange(level.Jitter!.Value, 0, 0.05);
        Assert.DoesNotContain(profile.Findings, f =>
            f.Code
                is "black-level-drift"
                    or "black-level-jumps"
                    or "first-frame-differs"
                    or "black-level-follows-temperature"
                    or "black-level-follows-exposure"
        );
        Assert.Equal(
            session.Camera.Shots.Where(s => s.Kind != SensorProfile.Frames.FrameKind.Flat).Sum(s => s.Count),
            level.Points.Count
        );
    }

    [Fact]
    public void ADarkCurrentBelowTheLevelsMovementsIsSaid()
    {
        using var session = new SimulatedSession(
            Camera(new Pedestal { Jitter = 2 }) with
            {
                DarkCurrent = new()
                {
                    RateAtReference = 0.01,
                    ReferenceTemperature = -10,
                    DoublingTemperature = 6.5,
                },
            },
            6
        );
        CameraProfile profile = session.Characterise().Profile;
        DarkCurrentLimit coldest = profile.Modes[0].FixedPattern!.BlackLevel!.Limits[0];
        Assert.True(coldest.Smallest!.Value > 0.01 * Math.Pow(2, -10 / 6.5));
        Finding finding = Assert.Single(profile.Findings, f => f.Code == "dark-below-black-level");
        output.WriteLine(finding.Message);
        Assert.StartsWith("At −20.0", finding.Message, StringComparison.Ordinal);
    }

    private static CameraDescription Camera(Pedestal pedestal) =>
        new()
        {
            Width = 160,
            Height = 120,
            Gain = 0.8,
            ReadNoise = 1.6,
            FullWell = 48000,
            BiasLevel = 500,
            Serial = 11,
            Pedestal = pedestal,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 0.05,
                ReferenceTemperature = -10,
                DoublingTemperature = 6.5,
            },
            DarkNonuniformity = 0.1,
            Shots =
            [
                .. Nights.Full(48000, [], [], bias: 8),
                .. temperatures.SelectMany(
                    (t, k) =>
                        (k % 2 == 0 ? new double[] { 300, 0, 60, 120 } : [0, 60, 300, 120]).Select(e => new Shot
                        {
                            Kind = e == 0 ? SensorProfile.Frames.FrameKind.Bias : SensorProfile.Frames.FrameKind.Dark,
                            Exposure = e,
                            Temperature = t,
                            Count = 5,
                        })
                ),
            ],
        };

    private static double Z(Measurement measured, double truth) =>
        (measured.Value - truth) / measured.StandardUncertainty;

    private static string Text(Measurement? m) =>
        m is null ? "—" : FormattableString.Invariant($"{m.Value:G4} ± {m.StandardUncertainty:G2}");
}
