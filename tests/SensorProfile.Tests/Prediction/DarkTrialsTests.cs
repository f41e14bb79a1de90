using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Prediction;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.FixedPattern;

namespace SensorProfile.Tests.Prediction;

/// <summary>Darks that are left out and computed from the rest.</summary>
public sealed class DarkTrialsTests
{
    private static readonly HotPixels hot = new()
    {
        Share = 0.02,
        Distribution = new() { Minimum = 2, Maximum = 40 },
        ActivationSpread = 0.05,
    };

    [Fact]
    public void EverySetAndEveryTemperatureIsLeftOut()
    {
        DarkPredictionProfile trials = Of(Input());
        Assert.Equal(12, trials.Sets.Count(s => s.LeftOut == "set"));
        Assert.Equal(12, trials.Sets.Count(s => s.LeftOut == "temperature"));
        // three exposures of the coldest and of the warmest
        Assert.Equal(6, trials.Sets.Count(s => s.Extrapolated));
        Assert.Equal(6, trials.ByTemperature!.Sets);
        Assert.Equal([30, 300], trials.ExposureRange);
        Assert.True(trials.Passed);
        // Residuals are what noise and stated uncertainty give: of 19200/5 ordinary pixels in 12 sets the robust
        // deviation scatters by 0.6 %.
        Assert.InRange(trials.ByExposure!.Typical!.Residual.Value / trials.ByExposure.Typical.Expected, 0.93, 1.05);
        Assert.InRange(trials.ByExposure.Typical.Coverage, 0.93, 0.98);
        Assert.InRange(trials.ByExposure.Hot!.Coverage, 0.90, 0.99);
    }

    [Fact]
    public void ATemperatureThatIsNotWhatTheProbeSaysFails()
    {
        PatternInput input = Input();
        DarkPredictionProfile wrong = Of(
            input with
            {
                Series =
                [
                    .. input.Series.Select(s => s.TemperatureCelsius == -10 ? s with { TemperatureCelsius = -7 } : s),
                ],
            }
        );
        Assert.False(wrong.Passed);
        Assert.Equal("hot", wrong.ByTemperature!.FailedBy);
    }

    [Fact]
    public void ThreeTemperaturesAreEnoughForTheOneBetween()
    {
        DarkPredictionProfile trials = Of(
            new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -15, -10, -5)) with { HotPixels = hot }).Input()
        );
        Assert.Equal(3, trials.ByTemperature!.Sets);
        Assert.True(trials.ByTemperature.Passed);
    }

    [Fact]
    public void OneTemperatureSpeaksForOtherExposuresOnly()
    {
        DarkPredictionProfile trials = Of(
            new PatternNight(PatternNight.Camera(PatternNight.Shots(5, -10)) with { HotPixels = hot }).Input()
        );
        Assert.True(trials.ByExposure!.Passed);
        Assert.Null(trials.ByTemperature);
        Assert.Null(trials.Beyond);
        Assert.Null(trials.ScalingByTemperature);
    }

    [Fact]
    public void NothingIsTriedQuicklyOrWithoutBias()
    {
        PatternInput input = Input();
        Assert.Null(DarkTrials.Run(input with { Quick = true }, Thresholds(input)));
        Assert.Null(DarkTrials.Run(input with { Unlit = null }, Thresholds(input)));
    }

    [Fact]
    public void TheSameBitsAtAnyThreadCount()
    {
        PatternInput input = Input();
        string One(int threads) =>
            System.Text.Json.JsonSerializer.Serialize(
                DarkTrials.Run(input with { Walk = new() { Threads = threads } }, Thresholds(input))
            );
        Assert.Equal(One(1), One(5));
    }

    [Fact]
    public void ALargeFrameIsThinnedInPairsThatKeepTheColourFilter()
    {
        var frame = Pixels.MemorySamples.Of("frame", 900, 700, (row, column) => row % 2 * 2 + column % 2 + 10);
        var input = Input() with
        {
            Width = 900,
            Height = 700,
            Unlit = null,
            Series = [new DarkSeries(-10, 0.05, [new DarkExposure(30, [frame])])],
        };
        PatternInput thin = ThinnedCamera.Thin(input)!;
        Assert.InRange(thin.Pixels, 0.97 * ThinnedCamera.Pixels, 1.03 * ThinnedCamera.Pixels);
        Assert.Equal(900.0 / 700, (double)thin.Width / thin.Height, 0.02);
        var rows = new ushort[thin.Pixels];
        thin.Series[0].Exposures[0].Frames[0].ReadRows(0, rows);
        Assert.All(Enumerable.Range(0, rows.Length), i =>
            Assert.Equal(i / thin.Width % 2 * 2 + i % thin.Width % 2 + 10, rows[i])
        );
    }

    // A column near the right edge of a large frame ended the whole characterisation: its number pointed beyond the
    // thinned frame.
    [Fact]
    public void DefectLinesOfALargeFrameStandAtTheirPlaceInTheThinnedOne()
    {
        // pairs of columns and rows are kept: of 20 in a row some stay and some go
        const int FirstColumn = 840,
            FirstRow = 640;
        var frame = Pixels.MemorySamples.Of("frame", 900, 700, (row, column) =>
            (column is >= FirstColumn and < FirstColumn + 20 ? 1000 + column : 0)
            + (row is >= FirstRow and < FirstRow + 20 ? 20_000 + row : 0)
        );
        Measurement excess = new(1, 0.1, "ADU", 1, "");
        var input = Input() with
        {
            Width = 900,
            Height = 700,
            Unlit = null,
            Series = [new DarkSeries(-10, 0.05, [new DarkExposure(30, [frame])])],
            Lines =
            [
                .. Enumerable
                    .Range(FirstColumn, 20)
                    .Select(c => new DefectLine(LineDirection.Column, c + 1, 351, 700, PatternKind.Level, excess)),
                .. Enumerable
                    .Range(FirstRow, 20)
                    .Select(r => new DefectLine(LineDirection.Row, r + 1, 1, 900, PatternKind.Level, excess)),
            ],
        };
        PatternInput thin = ThinnedCamera.Thin(input)!;
        var kept = new ushort[thin.Pixels];
        thin.Series[0].Exposures[0].Frames[0].ReadRows(0, kept);
        int[] columns = [.. Enumerable.Range(0, thin.Width).Where(c => kept[c] >= 1000)],
            rows = [.. Enumerable.Range(0, thin.Height).Where(r => kept[r * thin.Width] >= 20_000)];
        Assert.InRange(columns.Length, 4, 16);
        Assert.Equal(
            columns.Select(c => c + 1),
            thin.Lines.Where(l => l.Direction == LineDirection.Column).Select(l => l.Number)
        );
        Assert.Equal(
            rows.Select(r => r + 1),
            thin.Lines.Where(l => l.Direction == LineDirection.Row).Select(l => l.Number)
        );
        Assert.All(thin.Lines.Where(l => l.Direction == LineDirection.Column), l =>
            Assert.InRange(l.From, thin.Height / 2 - 1, thin.Height / 2 + 3)
        );
        Assert.All(thin.Lines, l => Assert.Equal(l.Direction == LineDirection.Column ? thin.Height : thin.Width, l.To));
    }

    private static PatternInput Input() =>
        new PatternNight(
            PatternNight.Camera(PatternNight.Shots(5, -20, -15, -10, -5)) with
            {
                HotPixels = hot,
            }
        ).Input();

    private static DarkPredictionProfile Of(PatternInput input) => DarkTrials.Run(input, Thresholds(input))!;

    private static DefectThresholds Thresholds(PatternInput input) =>
        PatternMeasurement.Measure(input, null)!.Profile.Thresholds!;
}
