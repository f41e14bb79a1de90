using SensorProfile.Decisions.Setpoint;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Characterisation;

/// <summary>One set of darks serves a sweep of gain settings.</summary>
public sealed class CarriedDarksTests
{
    private const double Rate = 0.3;

    private static readonly CameraDescription camera = new()
    {
        Name = "Tarn-9M",
        Width = 96,
        Height = 64,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = Rate, DoublingTemperature = 6 },
        Shots = Nights.Full(40000, [-10, 0, 10], [30, 120, 300], darks: 4, bias: 9),
        Settings = new() { Gain = 0 },
    };

    [Fact]
    public void AModeWithoutDarksTakesThoseOfAnother()
    {
        CameraProfile profile = Measured(High([], 0.2));
        ModeProfile measured = profile.Modes[0],
            carried = profile.Modes[1];
        Assert.Null(measured.DarkCurrent!.CarriedFrom);
        Assert.Equal(measured.Settings, carried.DarkCurrent!.CarriedFrom);
        Measurement own = measured.DarkCurrent.RateAtReference!,
            taken = carried.DarkCurrent.RateAtReference!;
        Assert.Equal(own.Value, taken.Value);
        // root sum of squares with the 5 % of an untested rate
        Assert.Equal(
            Math.Sqrt(Math.Pow(own.StandardUncertainty, 2) + Math.Pow(0.05 * own.Value, 2)),
            taken.StandardUncertainty,
            1e-9
        );
        Assert.Equal(
            measured.FixedPattern!.RateQuantiles.Select(q => q.Rate.Value),
            carried.FixedPattern!.RateQuantiles.Select(q => q.Rate.Value)
        );
        Finding said = Assert.Single(profile.Findings, f => f.Code == "dark-current-carried");
        Assert.StartsWith("At gain 120, offset 30: Dark current", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(profile.Findings, f => f.Severity == Severity.Refusal);

        // and every gain setting has its own answer
        SetpointAnswer[] answers = [.. profile.Modes.Select(m => Setpoint(profile, m))];
        Assert.Contains(answers[1].Findings, f => f.Code == "dark-current-carried");
        Assert.DoesNotContain(answers[0].Findings, f => f.Code == "dark-current-carried");
    }

    // The uncertainty of every law carries the 5 %: the draws of decisions come from its covariance.
    [Fact]
    public void TheLawsAreWidened()
    {
        CameraProfile profile = Measured(High([], 0.2));
        var own = profile.Modes[0].DarkCurrent!.Models[0];
        var taken = profile.Modes[1].DarkCurrent!.Models[0];
        double rate = own.Parameters[0].Value;
        Assert.Equal(own.Covariance[0][0] + 0.0025 * rate * rate, taken.Covariance[0][0], 1e-12);
        Assert.Equal(own.Covariance[1][1], taken.Covariance[1][1]);
    }

    [Fact]
    public void DarksOfASecondSettingTestIt()
    {
        CameraProfile profile = Measured(High(OneTemperature, 0.2));
        Assert.NotNull(profile.Modes[1].DarkCurrent!.CarriedFrom);
        Assert.Contains(
            "agree with it",
            Assert.Single(profile.Findings, f => f.Code == "dark-current-carried").Message,
            StringComparison.Ordinal
        );
        Assert.True(
            profile.Modes[1].DarkCurrent!.RateAtReference!.StandardUncertainty
                < 0.05 * profile.Modes[1].DarkCurrent!.RateAtReference!.Value
        );
    }

    // Darks of another sensor, or a gain by wrong flats: in electrons they disagree, and nothing is carried.
    [Fact]
    public void DarksThatDisagreeAreNotCarried()
    {
        CameraDescription other = High(OneTemperature, 0.2) with
        {
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 1.5 * Rate, DoublingTemperature = 6 },
        };
        CameraProfile profile = Measured(other);
        Assert.Null(profile.Modes[1].DarkCurrent?.CarriedFrom);
        Assert.DoesNotContain(profile.Findings, f => f.Code == "dark-current-carried");
        Finding said = Assert.Single(profile.Findings, f => f.Code == "dark-current-not-carried");
        Assert.Contains("disagree by a factor of 1.", said.Message, StringComparison.Ordinal);
    }

    private static Shot[] OneTemperature =>
        [
            .. new[] { 60.0, 300 }.Select(t => new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = t,
                Temperature = 10,
                Count = 6,
            }),
        ];

    private static CameraDescription High(Shot[] darks, double gain) =>
        camera with
        {
            Gain = gain,
            ReadNoise = 1.3,
            FullWell = 10000,
            Settings = new() { Gain = 120 },
            Shots =
            [
                .. Nights.Full(10000, [10], [60, 300], darks: 2, bias: 9).Where(s => s.Kind != FrameKind.Dark),
                .. darks,
            ],
        };

    private static SetpointAnswer Setpoint(CameraProfile profile, ModeProfile mode) =>
        SetpointAdvice.Advise(profile, mode, new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) });

    private static CameraProfile Measured(CameraDescription high)
    {
        using var session = new SimulatedSession(camera, 1);
        using var second = new SimulatedSession(high, 2);
        foreach (string file in Directory.GetFiles(second.Folder, "*.fits"))
            File.Copy(file, Path.Combine(session.Folder, "high-" + Path.GetFileName(file)));
        return session.Characterise().Profile;
    }
}
