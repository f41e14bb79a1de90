using SensorProfile.Drift;
using SensorProfile.Frames;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift;

public sealed class DarkLibraryCheckTests(ITestOutputHelper output) : IDisposable
{
    private static readonly Lazy<(double[] Dark, double[] Bias)> Library = new(() => SimulatedMasters.Library());

    private readonly SimulatedMasters masters = new();

    public void Dispose() => masters.Dispose();

    /// <summary>One library, written in eight ways: each is good for the camera that made it, and each is seen for what it is.</summary>
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
            (masters.Write("electrons.fits", off.Select(d => (float)(d * SimulatedMasters.Gain))), "electrons, bias taken off"),
        ];
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [.. ways.Select(w => w.File)]);
        foreach ((MasterVerdict verdict, string scale) in answer.Masters.Zip(ways, (v, w) => (v, w.Scale)))
        {
            Assert.Equal((verdict.File, scale, "keep"), (verdict.File, verdict.Scale, verdict.Verdict));
            Assert.InRange(verdict.SignalRatio!.Value, 0.98, 1.02);
        }
        Assert.Equal("keep", answer.Verdict);
        Assert.Empty(answer.Shoot);
        // 40 darks, 40 lights: √(1 + N_d²/N²) − 1 with N_d² = 2.56 + 3.6 + 0.05 e-² and N² = N_d² + 0.71 e-/s · 300 s: 1.4 %; ± the sampling of 30 000 pixels.
        Assert.InRange(answer.Masters[1].Loss!.Value, 1.0, 1.9);
    }

    [Fact]
    public void AMasterThatLacksManyNewHotPixelsIsRetaken()
    {
        string file = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(years: 3, newHot: 0.0015), [file]);
        Assert.Equal("retake", answer.Verdict);
        Assert.Equal("retake", answer.Masters[0].Parts.Single(p => p.Kind == "new-hot").Verdict);
        Assert.Contains("hot now and not in it", answer.Masters[0].Reason, StringComparison.Ordinal);
        DarksToShoot shoot = Assert.Single(answer.Shoot);
        Assert.Equal((300, -10), (shoot.Exposure, shoot.Temperature));
        Assert.True(shoot.Frames >= 8);
    }

    [Fact]
    public void AMasterOfHalfTheExposureIsNotWhatItsHeaderSays()
    {
        string file = masters.Write("half.fits", SimulatedMasters.Library(exposure: 150).Dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [file]);
        Assert.InRange(answer.Masters[0].SignalRatio!.Value, 1.95, 2.05);
        Assert.Equal("retake", answer.Verdict);
        Finding finding = Assert.Single(answer.Findings, f => f.Code == "master-not-as-stated");
        Assert.Contains("150 s", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutFreshBiasFramesACalibratedMasterCannotBeJudged()
    {
        // A pattern of the bias of 1.5 ADU = 1.2 e- is twice what is accepted (0.32 of the 2.3 e- of the stack); it is in the fresh darks and not in the master.
        var pattern = new Random(3);
        double[] dark = [.. Library.Value.Dark.Zip(Library.Value.Bias, (d, b) => d - b + 1.5 * MathNet.Numerics.Distributions.Normal.Sample(pattern, 0, 1))];
        string file = masters.Write("off.fits", dark.Select(d => (float)d));
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(bias: 0), [file]);
        Assert.Equal("cannot-tell", answer.Verdict);
        Assert.Contains("add a few bias frames", answer.Masters[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void FreshDarksOfAnotherExposureAreNoEvidence()
    {
        string file = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d), statedExposure: 120);
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [file]);
        Assert.Equal("cannot-tell", answer.Verdict);
        Assert.Equal("Cannot tell: no fresh darks like it (120 s, −10 °C): those given are 300 s, −10 °C.", answer.Masters[0].Reason);
    }

    [Fact]
    public void ADamagedMasterIsNamedAndTheRestIsChecked()
    {
        string good = masters.Write("float.fits", Library.Value.Dark.Select(d => (float)d)), torn = Path.Combine(masters.Folder, "torn.fits");
        File.WriteAllBytes(torn, File.ReadAllBytes(good)[..40_000]);
        DarkLibraryAnswer answer = Check(SimulatedMasters.Camera(), [torn, good]);
        Assert.Equal(["cannot-tell", "keep"], answer.Masters.Select(m => m.Verdict));
        Assert.Contains(answer.Findings, f => f.Code == "master-unreadable" && f.Frames.Contains(torn));
    }

    private DarkLibraryAnswer Check(Simulation.CameraDescription camera, IReadOnlyList<string> files)
    {
        Inventory fresh = masters.Fresh(camera);
        DarkLibraryAnswer answer = DarkLibraryCheck.Run(files, fresh, SimulatedMasters.Profile);
        output.WriteLine(answer.Sentence);
        foreach (MasterVerdict m in answer.Masters)
            output.WriteLine($"{Path.GetFileName(m.File)}: {m.Verdict}; {m.Scale}; residual {QuantityText.Of(m.Residual)}, stack {QuantityText.Of(m.StackNoise)}; {string.Join(", ", m.Parts.Select(p => $"{p.Kind} {QuantityText.Of(p.Value)} ({p.Verdict})"))}; {m.Reason}");
        return answer;
    }
}
