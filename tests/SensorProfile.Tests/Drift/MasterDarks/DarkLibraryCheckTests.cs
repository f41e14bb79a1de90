using SensorProfile.Drift.MasterDarks;
using SensorProfile.Drift.Patches;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Session;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.MasterDarks;

public sealed class DarkLibraryCheckTests(ITestOutputHelper output) : IDisposable
{
    private static readonly Lazy<(double[] Dark, double[] Bias)> Library = new(() => SimulatedMasters.Library());

    // the numbers below are worked out for 0.71 e-/px/s
    private static readonly DarkLibraryOptions darkSky = new() { Sky = NamedSkies.Dark };

    private readonly SimulatedMasters masters = new();

    public void Dispose() => masters.Dispose();

    /// <summary>
    /// One library, written in eleven ways: each is good for the camera that made it, and each is seen for what it is.
    /// </summary>
    [Fact]
    public void AGoodMasterIsKeptHoweverItWasWritten()
    {
        (double[] dark, double[] bias) = Library.Value;
        double[] off = [.. dark.Zip(bias, (d, b) => d - b)];
        (string File, string Scale)[] ways =
        [
            (masters.Write("integer.fits", dark.Select(d => (ushort)Math.Round(d))), "ADU, bias in it"),
            (masters.Write("float.fits", dark.Select(d => (float)d)), "ADU, bias in it"),
            (masters.Write("unit.fits", dark.Select(d => (float)(d / 65535))), "0 to 1, bias in it"),
            (masters.Write("off.fits", off.Select(d => (float)d)), "ADU, bias taken off"),
            (masters.Write("off-unit.fits", off.Select(d => d / 65535)), "0 to 1, bias taken off"),
            (masters.Write("off-pedestal.fits", off.Select(d => (float)(d + 100))), "ADU, bias taken off"),
            (masters.Write("sum.fits", dark.Select(d => (int)Math.Round(40 * d))), "the sum of 40 frames, bias in it"),
            (masters.Write("offset.fits", dark.Select(d => (float)(d + 1000))), "ADU, a constant added, bias in it"),
            (
                masters.Write("full-scale-14.fits", off.Select(d => (float)(d / 16383))),
                $"0 to 1 of {QuantityText.Count(16384)}, bias taken off"
            ),
            (masters.Write("median.fits", SimulatedMasters.MedianDark().Select(d => (float)d)), "ADU, bias in it"),
            (
                masters.Write("electrons.fits", off.Select(d => (float)(d * SimulatedMasters.Gain))),
                "electrons, bias taken off"
            ),
        ];
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [.. ways.Select(w => w.File)]);
        foreach ((MasterVerdict verdict, string scale) in answer.Masters.Zip(ways, (v, w) => (v, w.Scale)))
        {
            Assert.Equal((verdict.File, scale, CheckVerdict.Keep), (verdict.File, verdict.Scale, verdict.Verdict));
            Assert.InRange(verdict.SignalRatio!.Value, 0.98, 1.02);
        }
        Assert.Equal(CheckVerdict.Keep, answer.Library);
        Assert.Empty(answer.Shoot);
        // 40 darks, 40 lights: √(1 + N_d²/N²) − 1 with N_d² = 2.56 + 3.6 + 0.05 e-² and N² = N_d² + 0.71 e-/s · 300 s:
        // 1.4 %; ± the sampling of 30 000 pixels.
        Assert.InRange(answer.Masters[1].Loss!.Value, 1.0, 1.9);
    }

    /// <summary>
    /// A sum is a sum after years too, when its hot pixels no longer agree to 3 % with today's: probe 0.3 °C off, three
    /// years of growth.
    /// </summary>
    [Fact]
    public void ASumOfAnAgedSensorIsStillSeenAsASum()
    {
        string file = masters.Write("sum.fits", Library.Value.Dark.Select(d => (int)Math.Round(6 * d)));
        CameraDescription aged = SimulatedMasters.Camera(years: 3);
        DarkLibraryAnswer answer = Check(
            aged with
            {
                Thermometer = aged.Thermometer with { ProbeOffset = 0.5 },
            },
            [file]
        );
        Assert.Equal("the sum of 6 frames, bias in it", answer.Masters[0].Scale);
        Assert.Null(answer.Masters[0].Reason.Contradiction);
    }

    /// <summary>
    /// Without a profile the gain comes from the shot noise of the hot pixels; n ≈ 100 of them, so within 3·2.33/√100
    /// of 0.8.
    /// </summary>
    [Fact]
    public void WithoutAProfileTheSkyIsCountedAllTheSame()
    {
        string file = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d));
        Inventory fresh = masters.Fresh(SimulatedMasters.Camera());
        DarkLibraryAnswer answer = DarkLibraryCheck.Run([file], fresh, options: darkSky);
        output.WriteLine($"{answer.Library} {string.Join(" ", answer.Findings.Select(f => f.Message))}");
        Assert.Equal((CheckVerdict.Keep, "e-"), (answer.Library, answer.Masters[0].Residual!.Unit));
        Assert.Equal(GainSource.HotPixels, answer.GainFrom);
        Measurement with = DarkLibraryCheck
            .Run([file], fresh, SimulatedMasters.Profile, darkSky)
            .Masters[0]
            .StackNoise!;
        Assert.InRange(answer.Masters[0].StackNoise!.Value / with.Value, 0.6, 1.5);
    }

    /// <summary>
    /// The mean of the very frames that are to judge it leaves nothing at all, and was kept "at 0 %"; of frames that hold
    /// the fresh ones among others it leaves 1/n − 1/N of their variance where a foreign master leaves 1/n + 1/N.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    public void AMasterOfTheFreshDarksThemselvesTellsNothing(double others)
    {
        Inventory fresh = masters.Fresh(SimulatedMasters.Camera());
        FrameSet set = fresh.Sets.First(s => s.Kind == FrameKind.Dark);
        float[] mean = FreshDarks.Read(set, [], default)!.Mean;
        string file = masters.Write(
            "own.fits",
            mean.Select((m, i) => (float)((1 - others) * m + others * Library.Value.Dark[i]))
        );
        MasterVerdict verdict = DarkLibraryCheck.Run([file], fresh, SimulatedMasters.Profile, darkSky).Masters[0];
        Assert.Equal((CheckVerdict.CannotTell, MasterGround.SameFrames), (verdict.Verdict, verdict.Reason.Ground));
    }

    [Fact]
    public void AMasterThatLacksManyNewHotPixelsIsRetaken()
    {
        string file = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(years: 3, newHot: 0.0015), [file]);
        Assert.Equal(CheckVerdict.Retake, answer.Library);
        Assert.Equal(CheckVerdict.Retake, answer.Masters[0].Parts.Single(p => p.Kind == ResidualKind.NewHot).Verdict);
        DarksToShoot shoot = Assert.Single(answer.Shoot);
        Assert.Equal((300, -10), (shoot.Exposure, shoot.Temperature));
        Assert.True(shoot.Frames >= 8);
    }

    /// <summary>
    /// The demo's library of its first October against its fourth: the patch near the corner, about 470 pixels of 307
    /// 200, is not in it.
    /// </summary>
    [Fact]
    public void TheDemosFirstLibraryLacksThePatchNearTheCorner()
    {
        Shot[] Darks(int count) =>
            [
                new Shot
                {
                    Kind = FrameKind.Dark,
                    Temperature = -10,
                    Exposure = 300,
                    Count = count,
                },
            ];
        var night = new SimulatedNight(DemoCameras.Tarn9M() with { Shots = Darks(20) }, seed: 11);
        float[] mean =
        [
            .. night
                .Frames.Select(f => night.Render(f))
                .Aggregate(new float[640 * 480], (sum, frame) =>
                {
                    for (int i = 0; i < sum.Length; i++)
                        sum[i] += frame[i] / 20f;
                    return sum;
                }),
        ];
        string file = masters.Write("october-1.fits", mean, width: 640);
        Inventory fresh = masters.Fresh(DemoCameras.Tarn9M(3) with { Shots = Darks(8) }, name: "october-4");
        DarkLibraryAnswer answer = DarkLibraryCheck.Run([file], fresh, options: darkSky);
        Assert.Equal(CheckVerdict.Retake, answer.Library);
        GrowingPatch patch = answer.Masters[0].Patches[0];
        Assert.InRange(double.Hypot(patch.X - 52, patch.Y - 432), 0, 6);
        Assert.Equal("near the lower left corner", patch.Where);
        Assert.InRange(Assert.Single(answer.Shoot).Frames, 8, 40);
    }

    [Fact]
    public void AMasterOfHalfTheExposureIsNotWhatItsHeaderSays()
    {
        string file = masters.Write("half.fits", SimulatedMasters.Library(exposure: 150).Dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [file]);
        Assert.InRange(answer.Masters[0].SignalRatio!.Value, 1.95, 2.05);
        Assert.Equal(CheckVerdict.Retake, answer.Library);
        Assert.Equal(150, answer.Masters[0].Reason.Contradiction!.Exposure!.Value, 4.0);
    }

    /// <summary>
    /// Hot pixels of the simulated camera double every 6.1 °C, the profile says 7 for hot ones: half the signal is then
    /// 7 °C, whatever the typical pixel does.
    /// </summary>
    [Fact]
    public void TheTemperatureOfAMismatchIsReadFromTheHotPixelsOwnLaw()
    {
        string file = masters.Write("half.fits", SimulatedMasters.Library(exposure: 150).Dark.Select(d => (float)d));
        ModeProfile mode = SimulatedMasters.Profile.Modes[0] with
        {
            DarkCurrent = new DarkCurrentProfile { DoublingTemperature = new Measurement(6, 0.1, "°C", 5, "stated") },
            FixedPattern = new FixedPatternProfile
            {
                Thresholds = new DefectThresholds { HotRate = 0.1 },
                DoublingByRate = [Class(0.02, 9, 900), Class(0.2, 7, 90)],
            },
        };
        DarkLibraryAnswer answer = DarkLibraryCheck.Run(
            [file],
            masters.Fresh(SimulatedMasters.Camera()),
            SimulatedMasters.Profile with
            {
                Modes = [mode],
            }
        );
        HeaderContradiction contradiction = answer.Masters[0].Reason.Contradiction!;
        Assert.Equal(7, contradiction.Colder!.Value, 0.15);
        Assert.True(contradiction.SignalRatio > 1);

        static DoublingByRate Class(double from, double doubling, int pixels) =>
            new(from, 2 * from, new Measurement(doubling, 0.1, "°C", pixels, "stated"), 0, pixels);
    }

    /// <summary>
    /// A single frame for a master, which its header does not say: its extra variance is that of one dark.
    /// </summary>
    [Fact]
    public void ASingleDarkIsCalledOne()
    {
        string file = masters.Write(
            "one.fits",
            SimulatedMasters.SingleDark().Select(d => (float)d),
            statedFrames: null
        );
        MasterVerdict master = Check(SimulatedMasters.Camera(), [file]).Masters[0];
        Assert.Equal(CheckVerdict.Retake, master.Verdict);
        Assert.Null(master.Reason.OwnNoise);
        Assert.InRange(master.Reason.FramesAlike, 0.75, 1.5);
    }

    [Fact]
    public void WithoutFreshBiasFramesACalibratedMasterCannotBeJudged()
    {
        // A pattern of the bias of 1.5 ADU = 1.2 e- is twice what is accepted (0.32 of the 2.3 e- of the stack); it is
        // in the fresh darks and not in the master.
        var pattern = new Random(3);
        double[] dark =
        [
            .. Library.Value.Dark.Zip(Library.Value.Bias, (d, b) =>
                d - b + 1.5 * MathNet.Numerics.Distributions.Normal.Sample(pattern, 0, 1)
            ),
        ];
        string file = masters.Write("off.fits", dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(bias: 0), [file]);
        Assert.Equal(CheckVerdict.CannotTell, answer.Library);
        Assert.True(answer.Masters[0].Reason.BiasPatternStays);
    }

    [Fact]
    public void FreshDarksOfAnotherExposureAreNoEvidence()
    {
        string file = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d), statedExposure: 120);
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [file]);
        Assert.Equal(CheckVerdict.CannotTell, answer.Library);
        MasterReason reason = answer.Masters[0].Reason;
        Assert.Equal(
            (MasterGround.OtherConditions, 120.0, 300.0),
            (reason.Ground, reason.Master!.Exposure, reason.Others.Single().Exposure)
        );
    }

    [Fact]
    public void ADamagedMasterIsNamedAndTheRestIsChecked()
    {
        string good = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d)),
            torn = Path.Combine(masters.Folder, "torn.fits");
        File.WriteAllBytes(torn, File.ReadAllBytes(good)[..40_000]);
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [torn, good]);
        Assert.Equal([CheckVerdict.CannotTell, CheckVerdict.Keep], answer.Masters.Select(m => m.Verdict));
        Assert.Equal(MasterGround.Unreadable, answer.Masters[0].Reason.Ground);
        Assert.Contains(answer.Findings, f => f.Code == "master-unreadable" && f.Frames.Contains(torn));
    }

    private DarkLibraryAnswer Check(CameraDescription camera, IReadOnlyList<string> files)
    {
        Inventory fresh = masters.Fresh(camera);
        DarkLibraryAnswer answer = DarkLibraryCheck.Run(files, fresh, SimulatedMasters.Profile, darkSky);
        output.WriteLine($"{answer.Library}");
        foreach (MasterVerdict m in answer.Masters)
            output.WriteLine(
                $"{Path.GetFileName(m.File)}: {m.Verdict}; {m.Scale}; residual {QuantityText.Of(m.Residual)}, "
                    + $"stack {QuantityText.Of(m.StackNoise)}; "
                    + $"{string.Join(", ", m.Parts.Select(p => $"{p.Kind} {QuantityText.Of(p.Value)} ({p.Verdict})"))}; "
                    + $"{m.Reason}"
            );
        return answer;
    }
}
