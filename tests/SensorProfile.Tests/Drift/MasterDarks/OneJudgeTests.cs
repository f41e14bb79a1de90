using System.Globalization;
using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Decisions;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.MasterDarks;

/// <summary>
/// The same stack gets the same answer from the plan, the number of darks, the match and the check of the master that
/// was
/// made as planned.
/// </summary>
public sealed class OneJudgeTests(ITestOutputHelper output) : IDisposable
{
    private const double Celsius = -10;

    private readonly SimulatedMasters masters = new();

    public void Dispose() => masters.Dispose();

    // 40 lights, 20 positions, outliers clipped: the plan says 5 frames; the check, which could not be told of the
    // dithering, said "retake … 20.8 %"
    [Fact]
    public void ADitheredPlanMakesAMasterThatIsKept()
    {
        StackDescription stack = new()
        {
            Lights = 40,
            DitherPositions = 20,
            Rejection = Rejection.SigmaClip,
            Sky = SkyRate.Given(0.5),
        };
        Asked asked = Ask(Usual, stack);
        Assert.Equal(MinDarks.MinInMaster, asked.Planned);
        asked.Agrees(CheckVerdict.Keep);
        // the same five frames for a stack that stays at one place: √(1 + (N_d²/5)/(N²/40)) − 1 with N_d² = 3.6 + 2.56
        // +
        // 0.05 and N² = N_d² + 150 is 14.8 %
        MasterVerdict still = Check(Usual, stack with { DitherPositions = null, Rejection = Rejection.None }, 5);
        Assert.Equal(CheckVerdict.Retake, still.Verdict);
        Assert.InRange(still.Loss!.Value, 13, 17);
        Assert.InRange(asked.Check.Loss!.Value, 0.5, 1.1); // √(1 + 0.318/20) − 1 = 0.8 %
    }

    [Theory] // every way to describe a stack
    [InlineData(40, 1, Rejection.None)]
    [InlineData(40, 10, Rejection.None)]
    [InlineData(40, 1, Rejection.Median)]
    [InlineData(40, 10, Rejection.Winsorised)]
    [InlineData(80, 4, Rejection.SigmaClip)]
    public void ThePlanTheCountTheMatchAndTheCheckAgree(int lights, int positions, Rejection rejection) =>
        Ask(
                Usual,
                new StackDescription
                {
                    Lights = lights,
                    DitherPositions = positions,
                    Rejection = rejection,
                    Sky = SkyRate.Given(0.5),
                }
            )
            .Agrees(CheckVerdict.Keep);

    // a master that lacks hot pixels is seen through the dithering too, when they are many and nothing is rejected:
    // 0.6 % new ones between 0.05 and 20 e⁻/px/s, log-uniform; k = 4, one alone is seen beyond 4·3·N/√40 = 24 e⁻ or
    // 0.08
    // e⁻/px/s, 92 % of them, at four places each: 2 % of the places
    [Fact]
    public void NewHotPixelsShowAtManyPlacesOfAPlainStackAndAreRejectedByAClippedOne()
    {
        string file = masters.Write(
            "years.fits",
            SimulatedMasters.MeanDark(SimulatedMasters.Camera(), 40).Select(d => (float)d)
        );
        Inventory fresh = masters.Fresh(SimulatedMasters.Camera(years: 3, newHot: 0.002));
        var options = new DarkLibraryOptions
        {
            Lights = 40,
            DitherPositions = 4,
            Sky = SkyRate.Given(0.5),
        };
        MasterVerdict plain = DarkLibraryCheck.Run([file], fresh, SimulatedMasters.Profile, options).Masters[0];
        output.WriteLine($"{plain.Verdict}: {plain.Reason}");
        Assert.Equal(CheckVerdict.Retake, plain.Parts.Single(p => p.Kind == ResidualKind.NewHot).Verdict);
        double share = plain.Parts.Single(p => p.Kind == ResidualKind.NewHot).Value.Value;
        Assert.InRange(share, 0.01, 0.035);
        MasterVerdict clipped = DarkLibraryCheck
            .Run(
                [file],
                fresh,
                SimulatedMasters.Profile,
                options with
                {
                    DitherPositions = 20,
                    Rejection = Rejection.SigmaClip,
                }
            )
            .Masters[0];
        output.WriteLine($"{clipped.Verdict}: {clipped.Reason}");
        Assert.Equal(CheckVerdict.Keep, clipped.Parts.Single(p => p.Kind == ResidualKind.NewHot).Verdict);
    }

    // random cameras and stacks, 1000 in the long suite: what the plan advises keeps the loss by the match's own numbers, one frame fewer
    // does not unless five are the fewest, and the numbers move the right way
    [Fact]
    public void PlansOfRandomCamerasAndStacksKeepTheirLossAndMoveTheRightWay()
    {
        var random = new Random(1309);
        for (int i = 0; i < LongRuns.Of(200, 1000); i++)
        {
            Tarn camera = RandomCamera(random);
            StackDescription stack = RandomStack(random);
            SensorModel sensor = SensorReader.Of(camera.Profile(), camera.Mode()).Best;
            double frames = Frames(sensor, stack);
            string words = string.Create(CultureInfo.InvariantCulture, $"{i}: {camera} {stack} {frames}");
            Assert.True(Loss(sensor, stack, frames) <= stack.Limits.NoiseLoss + 1e-12, words);
            if (frames > MinDarks.MinInMaster)
                Assert.True(Loss(sensor, stack, frames - 1) > stack.Limits.NoiseLoss, words);
            double ratio = DarkCountAdvice.Ratio(sensor, stack.Sky!.Rate.Value, stack.ExposureSeconds, Celsius);
            Assert.Equal(MinDarks.InMaster(ratio, stack.LightsPerPosition, stack.Limits.NoiseLoss), frames);
            Assert.True(Frames(sensor, Brighter(stack)) <= frames, words);
            Assert.True(Frames(sensor, stack with { Lights = 2 * stack.Lights }) >= frames, words);
            Assert.True(Frames(sensor, Bearing(stack)) <= frames, words);
            if (stack.Rejection == Rejection.SigmaClip)
                continue; // what a clipped stack lets through falls again with the distance: no order to hold it to
            MismatchLimits limits = Limits(sensor, stack);
            Ordered(limits, Limits(sensor, Brighter(stack)), words);
            Ordered(Limits(sensor, stack with { Lights = 2 * stack.Lights }), limits, words);
            Ordered(limits, Limits(sensor, Bearing(stack)), words);
        }
    }

    // Plan, take the darks, check: also with 1 % of bright hot pixels, whose own shot noise passed for residuals once
    // (one in a thousand of 30 000 pixels are 30), and at any gain.
    [Theory]
    [InlineData(1311)]
    [InlineData(1312)]
    [InlineData(1313)]
    [InlineData(1314)]
    public void MastersOfRandomPlansAreKept(int seed)
    {
        var random = new Random(seed);
        for (int i = 0; i < 10; i++)
            Ask(RandomCamera(random), RandomStack(random)).Agrees(CheckVerdict.Keep);
    }

    private static Tarn Usual { get; } =
        new()
        {
            ReadNoise = 1.6,
            Gain = SimulatedMasters.Gain,
            Rate = 0.012,
            Doubling = 6.1,
            LogSpread = 0.25,
            HotShare = 0.004,
            HotFrom = 0.1,
            Width = 200,
            Height = 150,
        };

    private static Tarn RandomCamera(Random random)
    {
        double Between(double low, double high) => low * Math.Pow(high / low, random.NextDouble());
        double rate = Between(0.002, 0.1);
        return Usual with
        {
            ReadNoise = Between(0.8, 5),
            Gain = Between(0.3, 2),
            Rate = rate,
            Doubling = Between(5, 8),
            HotDoubling = Between(6, 9),
            LogSpread = Between(0.1, 0.4),
            HotShare = Between(0.001, 0.01),
            HotFrom = rate * Between(5, 20),
            HotTo = rate * 2000,
        };
    }

    private static StackDescription RandomStack(Random random)
    {
        (int Lights, int Positions, Rejection Rejection)[] stacks =
        [
            (20, 1, Rejection.None),
            (40, 1, Rejection.Median),
            (60, 6, Rejection.None),
            (40, 20, Rejection.SigmaClip),
            (30, 10, Rejection.SigmaClip),
            (100, 25, Rejection.Winsorised),
            (12, 12, Rejection.None),
        ];
        (int lights, int positions, Rejection rejection) = stacks[random.Next(stacks.Length)];
        return new StackDescription
        {
            ExposureSeconds = 60 + 240 * random.NextDouble(),
            Lights = lights,
            DitherPositions = positions,
            Rejection = rejection,
            Sky = SkyRate.Given(0.05 * Math.Pow(200, random.NextDouble())),
            Limits = new LossLimits { NoiseLoss = 0.02 + 0.13 * random.NextDouble() },
        };
    }

    private static StackDescription Brighter(StackDescription stack) =>
        stack with
        {
            Sky = SkyRate.Given(2 * stack.Sky!.Rate.Value),
        };

    private static StackDescription Bearing(StackDescription stack) =>
        stack with
        {
            Limits = stack.Limits with { NoiseLoss = 1.5 * stack.Limits.NoiseLoss },
        };

    private static double Frames(SensorModel sensor, StackDescription stack) =>
        new MasterGroups(
            sensor,
            new PlanQuestion { Limits = stack.Limits },
            stack.Sky!.Rate.Value,
            LightSlice.Split(Planned(stack))
        )
            .Fewest()
            .Sum(g => g.Frames);

    private static PlannedLights Planned(StackDescription stack) =>
        new()
        {
            ExposureSeconds = stack.ExposureSeconds,
            StartCelsius = Celsius,
            Lights = stack.Lights,
            DitherPositions = stack.Positions,
            Rejection = stack.Rejection,
        };

    private static double Loss(SensorModel sensor, StackDescription stack, double frames) =>
        Mismatch(sensor, stack)
            .Loss(
                new DarkFrames
                {
                    ExposureSeconds = stack.ExposureSeconds,
                    TemperatureCelsius = Celsius,
                    Frames = (int)frames,
                }
            );

    private static DarkMismatch Mismatch(SensorModel sensor, StackDescription stack) =>
        new(sensor, stack.At(Celsius, stack.Sky!), stack.Sky!.Rate.Value, stack.Limits);

    private static MismatchLimits Limits(SensorModel sensor, StackDescription stack) =>
        MismatchLimits.Find(Mismatch(sensor, stack), scaled: false);

    private static void Ordered(MismatchLimits strict, MismatchLimits easy, string words)
    {
        void Check(double? a, double? b) =>
            Assert.True(b is null || (a is not null && a <= b * (1 + 1e-6)), $"{words}: {a} {b}");
        Check(strict.All.Warmer, easy.All.Warmer);
        Check(strict.All.Colder, easy.All.Colder);
        Check(strict.All.Exposure, easy.All.Exposure);
    }

    /// <summary>The four answers on one stack.</summary>
    private sealed record Asked(int Planned, double Counted, MatchVerdict Match, MasterVerdict Check)
    {
        public void Agrees(CheckVerdict verdict)
        {
            Assert.Equal((double)Planned, Counted);
            Assert.Equal(MatchVerdict.Fits, Match);
            Assert.True(verdict == Check.Verdict, $"{Planned} frames: {Check.Verdict}, {Check.Reason}");
        }
    }

    private Asked Ask(Tarn camera, StackDescription stack)
    {
        CameraProfile profile = camera.Profile();
        int planned = Assert
            .Single(
                DarksPlan
                    .Find(
                        profile,
                        new PlanQuestion
                        {
                            Lights = [Planned(stack)],
                            Sky = stack.Sky,
                            Limits = stack.Limits,
                        }
                    )
                    .Masters
            )
            .Frames;
        double counted = DarkCountAdvice
            .Find(
                profile,
                camera.Mode(),
                new DarkCountQuestion
                {
                    ExposureSeconds = stack.ExposureSeconds,
                    TemperatureCelsius = Celsius,
                    Lights = stack.Lights,
                    DitherPositions = stack.DitherPositions,
                    Rejection = stack.Rejection,
                    Sky = stack.Sky,
                    Limits = stack.Limits,
                }
            )
            .Quantities["darks"]!.Value;
        MatchVerdict match = DarkMatching
            .Find(
                profile,
                new MatchQuestion
                {
                    Lights = [Sets.Of(FrameKind.Light, stack.Lights, stack.ExposureSeconds, Celsius)],
                    Darks = [Sets.Of(FrameKind.Dark, planned, stack.ExposureSeconds, Celsius)],
                    Stack = stack,
                }
            )
            .Worst;
        return new Asked(planned, counted, match, Check(camera, stack, planned));
    }

    private MasterVerdict Check(Tarn camera, StackDescription stack, int frames)
    {
        string name = Guid.NewGuid().ToString("N");
        CameraDescription simulated = Simulated(camera, stack.ExposureSeconds);
        string file = masters.Write(
            $"{name}.fits",
            SimulatedMasters.MeanDark(simulated, frames).Select(d => (float)d),
            statedExposure: stack.ExposureSeconds,
            statedFrames: frames
        );
        MasterVerdict verdict = DarkLibraryCheck
            .Run(
                [file],
                masters.Fresh(simulated, name: name),
                camera.Profile(),
                new DarkLibraryOptions
                {
                    Lights = stack.Lights,
                    DitherPositions = stack.DitherPositions,
                    Rejection = stack.Rejection,
                    Sky = stack.Sky,
                    Limits = stack.Limits,
                }
            )
            .Masters[0];
        output.WriteLine($"{frames} frames: {verdict.Verdict}, {QuantityText.Of(verdict.Loss)}; {verdict.Reason}");
        return verdict;
    }

    /// <summary>The camera whose true values stand in the profile, without row and column noise of its own.</summary>
    private static CameraDescription Simulated(Tarn camera, double exposure) =>
        SimulatedMasters.Camera(exposure: exposure, darks: 12, bias: 0) with
        {
            Gain = camera.Gain,
            ReadNoise = camera.ReadNoise,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = camera.Rate,
                ReferenceTemperature = Celsius,
                DoublingTemperature = camera.Doubling,
            },
            DarkNonuniformity = camera.LogSpread,
            HotPixels = new HotPixels
            {
                Share = camera.HotShare,
                Distribution = new HotPixelDistribution
                {
                    Kind = HotPixelTail.LogUniform,
                    Minimum = camera.HotFrom,
                    Maximum = Math.Max(20, 2 * camera.HotFrom),
                },
            },
        };
}
