using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting.Tests.Content.Sensor;

/// <summary>Whether a dark can be computed: verdict, table and numbers.</summary>
public sealed class PredictionBlocksTests
{
    private static readonly PredictionFigures figures = new(
        1000,
        0.95,
        new Measurement(1.42, 0.01, "e-", 1000, "test"),
        1.2,
        1.46
    );

    private static readonly DarkPredictionProfile trials = new()
    {
        Passed = true,
        Coverage = 0.96,
        ByExposure = new PredictionTest
        {
            Passed = true,
            Sets = 3,
            Typical = figures,
            Hot = figures,
        },
        ByTemperature = new PredictionTest
        {
            Passed = true,
            Sets = 2,
            Typical = figures,
            Hot = figures,
        },
        ScalingByExposure = new PredictionTest
        {
            Passed = true,
            Sets = 3,
            Typical = figures,
        },
        ScalingByTemperature = new PredictionTest
        {
            Sets = 3,
            Typical = figures,
            Hot = figures with { Residual = new Measurement(18, 0.3, "e-", 500, "test"), Expected = 11 },
            FailedBy = "hot",
        },
        Sets =
        [
            new LeftOutSet
            {
                Temperature = -10,
                Exposure = 300,
                Frames = 6,
                Typical = figures,
                Hot = figures,
            },
        ],
    };

    [Fact]
    public void TheVerdictAndEveryWayThatWasTriedAreShown()
    {
        Block[] blocks = [.. PredictionBlocks.Compose(new FixedPatternProfile { DarkPrediction = trials })];
        Assert.Equal("Can a dark be computed?", Assert.IsType<SubheadingBlock>(blocks[0]).Text);
        string verdict = Assert.IsType<TextBlock>(blocks[1]).Text;
        Assert.StartsWith(
            "A dark can be computed at any temperature and exposure within the measured range",
            verdict,
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "Scaling a dark by exposure works on this camera; scaling by temperature does not work on this camera "
                + "(hot pixels are off by 18 e⁻, where noise explains 11 e⁻). The table gives the spread of computed "
                + "minus real masters, in brackets the spread expected; set by set: table dark-prediction.",
            verdict,
            StringComparison.Ordinal
        );
        var table = Assert.IsType<TableBlock>(blocks[2]);
        Assert.Equal(["yes", "yes", "yes", "no"], table.Rows.Select(r => r[1]));
        Assert.Equal(["1.4 (1.5)", "1.4 (1.5)", "–"], table.Rows[0].Skip(2));
    }

    [Fact]
    public void AFailureSaysToTakeRealDarks()
    {
        DarkPredictionProfile failed = trials with
        {
            Passed = false,
            ByExposure = new PredictionTest
            {
                Sets = 3,
                Typical = figures,
                Hot = figures,
                FailedBy = "hot",
            },
        };
        Assert.StartsWith(
            "No dark can be computed for this camera: hot pixels",
            Assert
                .IsType<TextBlock>(
                    PredictionBlocks.Compose(new FixedPatternProfile { DarkPrediction = failed }).ElementAt(1)
                )
                .Text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void NothingTriedShowsNothing()
    {
        Assert.Empty(PredictionBlocks.Compose(new FixedPatternProfile()));
        Assert.Empty(PredictionTables.Of(null).Rows);
    }

    [Fact]
    public void EveryLeftOutSetStandsInTheTableOncePerKindOfPixel()
    {
        DataTable table = Assert.Single(
            ModeTables.Of(new ModeProfile { FixedPattern = new FixedPatternProfile { DarkPrediction = trials } }),
            t => t.Name == "dark-prediction"
        );
        Assert.Equal(2, table.Rows.Count);
        Assert.All(table.Rows, row => Assert.Equal(table.Columns.Count, row.Count));
    }
}
