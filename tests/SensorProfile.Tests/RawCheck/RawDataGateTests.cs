using SensorProfile.Frames;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.RawCheck;

/// <summary>Processed data get no numbers in electrons.</summary>
public sealed class RawDataGateTests
{
    private const int Width = 96;
    private const int Height = 64;

    private static readonly CameraDescription camera = new()
    {
        Name = "Tarn-9M",
        Width = Width,
        Height = Height,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.3, DoublingTemperature = 6 },
        Shots = Nights.Full(40000, [-10], [30, 120, 300], darks: 3, bias: 9),
    };

    // A gamma of 2.2 in the codes; a logarithm; a square root.
    [Theory]
    [InlineData("gamma")]
    [InlineData("log")]
    [InlineData("root")]
    public void StretchedFramesAreRefused(string stretch)
    {
        CameraProfile profile = Measured(value => 65535 * Stretched(value / 65535.0, stretch));
        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.Null(mode.Gain);
        Assert.Null(mode.ReadNoise);
        Assert.Null(mode.FullWell);
        Assert.Null(mode.DarkCurrent);
        Finding refused = Assert.Single(profile.Findings, f => f.Code is "response-not-raw" or "gain-not-measurable");
        Assert.Equal(Severity.Refusal, refused.Severity);
    }

    [Fact]
    public void EightBitsGiveNoReadNoise()
    {
        CameraProfile profile = Measured(value => value / 256);
        Assert.Null(Assert.Single(profile.Modes).ReadNoise);
        Assert.Contains(profile.Findings, f => f.Severity == Severity.Refusal);
    }

    [Fact]
    public void RawFramesPass()
    {
        CameraProfile profile = Measured(value => value);
        Assert.DoesNotContain(profile.Findings, f => f.Code == "response-not-raw");
        Measurement gain = Assert.Single(profile.Modes).Gain!;
        Assert.Equal(0.8, gain.Value, 5 * gain.StandardUncertainty);
    }

    // What several modes share is said once, with their names; what one has alone names it.
    [Fact]
    public void FindingsNameTheirMode()
    {
        CameraDescription At(double gain) =>
            camera with
            {
                Shots =
                [
                    new() { Kind = FrameKind.Bias, Count = 6 },
                    .. new[] { 0.1, 0.3, 0.5 }.Select(share => new Shot
                    {
                        Kind = FrameKind.Flat,
                        Exposure = 10 * share,
                        Level = share * 40000,
                        Count = 2,
                    }),
                ],
                Settings = new() { Gain = gain },
            };
        using var low = new SimulatedSession(At(0), 1);
        using var high = new SimulatedSession(At(120), 2);
        foreach (string file in Directory.GetFiles(high.Folder, "*.fits"))
            File.Copy(file, Path.Combine(low.Folder, "high-" + Path.GetFileName(file)));
        CameraProfile profile = low.Characterise().Profile;
        Assert.Equal(2, profile.Modes.Count);
        Finding unsaturated = Assert.Single(profile.Findings, f => f.Code == "saturation-not-reached");
        Assert.StartsWith("At gain 0, offset 30; gain 120, offset 30: ", unsaturated.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.0, Severity.Note, "they agree.")]
    [InlineData(0.8, Severity.Warning, "% higher and is used.")]
    public void TheGainThatHeadersStateStandsBesideTheMeasuredOne(double factor, Severity severity, string end)
    {
        using var session = new SimulatedSession(
            camera with
            {
                Settings = new HeaderSettings { ClaimedGainFactor = factor },
            },
            5
        );
        Finding said = Assert.Single(session.Characterise().Profile.Findings, f => f.Code == "gain-claimed");
        Assert.Equal(severity, said.Severity);
        Assert.EndsWith(end, said.Message, StringComparison.Ordinal);
    }

    // A step in the light alone (dust, an edge in the path) is not an amplifier's.
    [Fact]
    public void StepsInTheLightAreNotAmplifiers()
    {
        using var session = new SimulatedSession(camera, 5);
        RawPixels.RewriteAll(session.Folder, "flat", Width, Height, (code, column, _) =>
            column < Width / 2 ? code : 500 + (int)Math.Round(1.05 * (code - 500))
        );
        CameraProfile profile = session.Characterise().Profile;
        Assert.Contains(profile.Findings, f => f.Code == "response-step");
        Assert.DoesNotContain(profile.Findings, f => f.Code == "tap-boundary");
    }

    private static double Stretched(double value, string stretch) =>
        stretch switch
        {
            "gamma" => Math.Pow(value, 1 / 2.2),
            "log" => Math.Log(1 + 1000 * value) / Math.Log(1001),
            _ => Math.Sqrt(value),
        };

    private static CameraProfile Measured(Func<int, double> value)
    {
        using var session = new SimulatedSession(camera, 5);
        RawPixels.RewriteAll(session.Folder, "", Width, Height, (code, _, _) => (int)Math.Round(value(code)));
        return session.Characterise().Profile;
    }
}
