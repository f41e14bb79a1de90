using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>flats plan, and smooth residuals, on a stored profile.</summary>
public sealed class FlatsPlanCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public FlatsPlanCommandTests() => TarnProfile.Write(folder["profile.json"]);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void FlatsPlanSaysHowManyAtWhichLevelAndWritesTheLevelsAsATable()
    {
        string[] question = ["flats", "plan", "profile.json", "--sky", "4.5", "--lights", "40", "--csv", "levels.csv"];
        CommandRun text = folder.Command.Run([.. question, "--explain"]).Expect(ExitCodes.Answered);
        Assert.Matches(@"^Take \d+ flats at about 70 % of full well \(35.000 e⁻\): fewer would cost", text.FirstLine);
        Assert.Contains("\"20 to 30 flats\" (common practice, no source)", text.Output, StringComparison.Ordinal);
        string[] rows = File.ReadAllLines(folder["levels.csv"]);
        Assert.StartsWith("full_well_percent,level_e,level_adu,flats,", rows[0], StringComparison.Ordinal);
        Assert.Single(rows, row => row.EndsWith(",taken", StringComparison.Ordinal));
        JsonElement json = folder.Command.Run([.. question, "--overwrite", "--json"]).Expect(ExitCodes.Answered).Json;
        Assert.Equal(text.FirstLine, json.GetProperty("sentence").GetString());
        Assert.Equal("answered", json.GetProperty("verdict").GetString());
        double flats = json.GetProperty("quantities").GetProperty("flats").GetProperty("value").GetDouble(),
            dithered = json.GetProperty("dithered")
                .GetProperty("quantities")
                .GetProperty("flats")
                .GetProperty("value")
                .GetDouble();
        Assert.Contains($"Take {flats} flats", text.FirstLine, StringComparison.Ordinal);
        Assert.True(dithered < flats);
        string[] assumed =
        [
            .. json.GetProperty("assumptions").EnumerateArray().Select(a => a.GetProperty("name").GetString()!),
        ];
        Assert.Equal(
            [
                "exposure",
                "lights",
                "sky",
                "ditherPositions",
                "rejection",
                "acceptedLoss",
                "smoothScale",
                "darkFlats",
                "flatFallOff",
                "temperature",
            ],
            assumed
        );
    }

    [Theory]
    [InlineData("flats plan profile.json --level 0", "full well")]
    [InlineData("flats plan profile.json --dark-flats 0", "dark flats")]
    [InlineData("flats plan profile.json --three-skies", "one sky")]
    [InlineData("flats plan profile.json --names-say", "frames on disk")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --smooth 0.5", "between 1 and 10000 px")]
    [InlineData("report profile.json --out again --smooth 0", "between 1 and 10000 px")]
    public void WhatMakesNoSenseOfFlatsAndScalesIsRefused(string line, string said) =>
        Assert.Contains(
            said,
            folder.Command.Run(line.Split(' ')).Expect(ExitCodes.WrongCommandLine).Error,
            StringComparison.Ordinal
        );

    [Fact] // the same stack, the same limit: match, plan and check judge smooth residuals alike
    public void SmoothResidualsAreJudgedOverTheirScale()
    {
        double Warmer(params string[] more)
        {
            JsonElement json = folder
                .Command.Run([
                    "darks",
                    "match",
                    "profile.json",
                    "--exposure",
                    "300",
                    "--lights",
                    "40",
                    "--dithers",
                    "20",
                    "--rejects",
                    "--json",
                    .. more,
                ])
                .Expect(ExitCodes.Answered)
                .Json;
            JsonElement level = json.GetProperty("causes")
                .EnumerateArray()
                .Single(c => c.GetProperty("cause").GetString() == "level");
            return level.GetProperty("warmer").GetProperty("value").GetDouble();
        }
        Assert.Equal(Warmer(), Warmer("--smooth", "10"), 1e-9);
        Assert.True(Warmer("--smooth", "100") < 0.5 * Warmer());
    }
}
