using SensorProfile.FixedPattern;
using SensorProfile.Prediction;
using SensorProfile.Profiles;
using SensorProfile.Simulation.Parameters;
using SensorProfile.Tests.FixedPattern;

namespace SensorProfile.Tests.Prediction;

/// <summary>Darks that are left out and computed from the rest.</summary>
public sealed class DarkTrialsTests
{
    private static readonly HotPixels hot = new() { Share = 0.02, Distribution = new() { Minimum = 2, Maximum = 40 }, ActivationSpread = 0.05 };

    [Fact]
    public void EverySetAndEveryTemperatureIsLeftOut()
    {
        DarkPredictionProfile trials = Of(Input());
        Assert.Equal(12, trials.Sets.Count(s => s.LeftOut == "set"));
        Assert.Equal(12, trials.Sets.Count(s => s.LeftOut == "temperature"));
        Assert.Equal(6, trials.Sets.Count(s => s.Extrapolated));              // three exposures of the coldest and of the warmest
        Assert.Equal(6, trials.ByTemperature!.Sets);
        Assert.Equal([30, 300], trials.ExposureRange);
        Assert.True(trials.Passed);
        // Residuals are what noise and stated uncertainty give: of 19200/5 ordinary pixels in 12 sets the robust deviation scatters by 0.6 %.
        Assert.InRange(trials.ByExposure!.Typical!.Residual.Value / trials.ByExposure.Typical.Expected, 0.93, 1.05);
        Assert.InRange(trials.ByExposure.Typical.Coverage, 0.93, 0.98);
        Assert.InRange(trials.ByExposure.Hot!.Coverage, 0.90, 0.99);
    }

    [Fact]
    public void ATemperatureThatIsNotWhatTheProbeSaysFails()
    {
        PatternInput input = Input();
        DarkPredictionProfile wrong = Of(input with { Series = [.. input.Series.Select(s => s.TemperatureCelsius == -10 ? s with { TemperatureCelsius = -7 } : s)] });
        Assert.False(wrong.Passed);
        Assert.Equal("hot", wrong.ByTemperature!.FailedBy);
    }

    [Fact]
    public void ThreeTemperaturesAreEnoughForTheOneBetween()
    {
        DarkPredictionProfile trials = Of(new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -15, -10, -5)) with { HotPixels = hot }).Input());
        Assert.Equal(3, trials.ByTemperature!.Sets);
        Assert.True(trials.ByTemperature.Passed);
    }

    [Fact]
    public void OneTemperatureSpeaksForOtherExposuresOnly()
    {
        DarkPredictionProfile trials = Of(new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)) with { HotPixels = hot }).Input());
        Assert.True(trials.ByExposure!.Passed);
        Assert.Null(trials.ByTemperature);
        Assert.Null(trials.Beyond);
        Assert.Null(trials.ScalingByTemperature);
    }

    [Fact]
    public void NothingIsTriedQuicklyOrWithoutBias()
    {
        PatternInput input = Input();
        Assert.Null(DarkTrials.Of(input with { Quick = true }, Thresholds(input)));
        Assert.Null(DarkTrials.Of(input with { Unlit = null }, Thresholds(input)));
    }

    [Fact]
    public void TheSameBitsAtAnyThreadCount()
    {
        PatternInput input = Input();
        string One(int threads) => System.Text.Json.JsonSerializer.Serialize(DarkTrials.Of(input with { Walk = new() { Threads = threads } }, Thresholds(input)));
        Assert.Equal(One(1), One(5));
    }

    [Fact]
    public void ALargeFrameIsThinnedInPairsThatKeepTheColourFilter()
    {
        var frame = Pixels.MemorySamples.Of("frame", 900, 700, (row, column) => row % 2 * 2 + column % 2 + 10);
        var input = Input() with
        {
            Width = 900, Height = 700, Unlit = null, Series = [new DarkSeries(-10, 0.05, [new DarkExposure(30, [frame])])],
        };
        PatternInput thin = ThinnedCamera.Of(input)!;
        Assert.InRange(thin.Pixels, 0.97 * ThinnedCamera.Pixels, 1.03 * ThinnedCamera.Pixels);
        Assert.Equal(900.0 / 700, (double)thin.Width / thin.Height, 0.02);
        var rows = new ushort[thin.Pixels];
        thin.Series[0].Exposures[0].Frames[0].ReadRows(0, rows);
        Assert.All(Enumerable.Range(0, rows.Length), i => Assert.Equal(i / thin.Width % 2 * 2 + i % thin.Width % 2 + 10, rows[i]));
    }

    private static PatternInput Input() => new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -20, -15, -10, -5)) with { HotPixels = hot }).Input();

    private static DarkPredictionProfile Of(PatternInput input) => DarkTrials.Of(input, Thresholds(input))!;

    private static DefectThresholds Thresholds(PatternInput input) => PatternMeasurement.Of(input, null)!.Profile.Thresholds!;
}
