using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Answers;

/// <summary>
/// A camera whose colours each have a gain and a read noise of their own, and no mean of them
/// answers for all.
/// </summary>
public class StrictestColourTests
{
    private static readonly Tarn camera = new() { Relative = 0.005 };

    private static readonly (string Name, double ReadNoise, double Gain)[] colours =
    [
        ("R", 4.5, 0.4),
        ("G1", 3, 0.8),
        ("G2", 3, 0.8),
        ("B", 1.5, 0.6),
    ];

    private static readonly ModeProfile mode = camera.Mode() with
    {
        ReadNoise = null,
        Gain = null,
        Channels =
        [
            .. colours.Select(c => new ChannelProfile
            {
                Name = c.Name,
                ReadNoise = camera.Of(c.ReadNoise, "e-"),
                Gain = camera.Of(c.Gain, "e-/ADU"),
                FullWell = camera.Of(50000, "e-"),
            }),
        ],
    };

    private static readonly SkyRate sky = SkyRate.Given(0.05);

    private static CameraProfile Of(ModeProfile one) => camera.Profile() with { Modes = [one] };

    /// <summary>The camera as if it had this colour alone.</summary>
    private static ModeProfile Alone(int colour) =>
        camera.Mode() with
        {
            ReadNoise = camera.Of(colours[colour].ReadNoise, "e-"),
            Gain = camera.Of(colours[colour].Gain, "e-/ADU"),
        };

    [Fact] // the quietest colour, blue, shows dark current first: its set point is the coldest
    public void TheSetPointIsThatOfTheQuietestColour()
    {
        SetpointQuestion question = new() { ExposureSeconds = 60, Sky = SkyRate.Given(0.2) };
        SetpointAnswer answer = SetpointAdvice.Find(Of(mode), mode, question);
        SetpointAnswer[] alone = [.. colours.Select((_, c) => SetpointAdvice.Find(Of(Alone(c)), Alone(c), question))];
        Assert.Equal(alone[3].At, answer.At);
        Assert.All(alone, each => Assert.True(answer.At.Temperature <= each.At.Temperature));
        Assert.True(alone[0].At.Temperature > alone[3].At.Temperature, "the colours do not differ");
        Assert.Equal(colours.Select(c => c.Name), answer.Colours.Select(c => c.Colour));
        Assert.Equal(
            alone.Select(each => each.Quantities["setpoint"]!.Value),
            answer.Colours.Select(c => c.Quantities["setpoint"]!.Value)
        );
        Finding said = Assert.Single(answer.Findings, f => f.Code == "colours-apart");
        Assert.Contains("of the strictest, B (R ", said.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Findings, f => f.Code == "channels-averaged");
    }

    [Fact] // darks count for their noise against that of the light: most in the noisiest colour, red
    public void TheNumberOfDarksIsThatOfTheNoisiestColour()
    {
        DarkCountQuestion question = new()
        {
            ExposureSeconds = 300,
            TemperatureCelsius = -10,
            Lights = 40,
            Sky = sky,
        };
        DarkCountAnswer answer = DarkCountAdvice.Find(Of(mode), mode, question);
        int[] alone = [.. colours.Select((_, c) => DarkCountAdvice.Find(Of(Alone(c)), Alone(c), question).Darks)];
        Assert.Equal(alone[0], answer.Darks);
        Assert.Equal(alone.Max(), answer.Darks);
        Assert.True(alone[0] > alone[3]);
        Assert.Contains(answer.Findings, f => f.Message.Contains("strictest, R (R ", StringComparison.Ordinal));

        // and a plan serves all of them
        PlanAnswer plan = DarksPlan.Find(Of(mode), new PlanQuestion { Lights = [PlannedLights.Usual(-10)], Sky = sky });
        Assert.Equal(answer.Darks, Assert.Single(plan.Masters).Frames);
        Assert.Contains(plan.Findings, f => f.Code == "colours-apart");
    }

    [Fact]
    public void TheToleranceIsThatOfTheQuietestColour()
    {
        ToleranceQuestion question = new()
        {
            ExposureSeconds = 300,
            Lights = 40,
            TemperatureCelsius = -10,
            Sky = sky,
        };
        ToleranceAnswer answer = DarkTolerance.Find(Of(mode), mode, question);
        double[] alone =
        [
            .. colours.Select(
                (_, c) => DarkTolerance.Find(Of(Alone(c)), Alone(c), question).Quantities["toleranceWarmer"]!.Value
            ),
        ];
        Assert.Equal(alone.Min(), answer.Quantities["toleranceWarmer"]!.Value);
        Assert.Equal(alone[3], answer.Quantities["toleranceWarmer"]!.Value);
        Assert.Contains(answer.Findings, f => f.Message.Contains("strictest, B (R ", StringComparison.Ordinal));

        // the same judge: darks that far off fit and a little farther do not
        MatchVerdict At(double apart) =>
            DarkMatching
                .Find(
                    Of(mode),
                    new MatchQuestion
                    {
                        Lights = [Sets.Of(FrameKind.Light, 40, 300, -10)],
                        Darks = [Sets.Of(FrameKind.Dark, 400, 300, -10 + apart)],
                        Stack = question with { DitherPositions = 1 },
                    }
                )
                .Worst;
        Assert.NotEqual(MatchVerdict.Fits, At(1.3 * alone[3]));
    }

    [Fact] // red asks for the longest light: R²/(p·(2 + p)·S) with its read noise
    public void TheShortestLightIsThatOfTheNoisiestColour()
    {
        GainChoiceAnswer answer = GainChoice.Find(Of(mode), sky, 300);
        GainChoiceAnswer red = GainChoice.Find(Of(Alone(0)), sky, 300);
        Assert.Equal(red.Quantities["shortestExposure"]!.Value, answer.Quantities["shortestExposure"]!.Value);
        Assert.Contains(answer.Findings, f => f.Code == "colours-apart");
    }
}
