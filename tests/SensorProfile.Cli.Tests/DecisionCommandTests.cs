using System.Globalization;
using System.Text.Json;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Cli.Tests;

/// <summary>
/// setpoint, exposure, darks match and darks plan on a stored profile, and wrong questions to them and to shots.
/// </summary>
public sealed class DecisionCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public DecisionCommandTests() => TarnProfile.Write(folder["profile.json"]);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void SetpointNamesATemperatureFirstAndAgreesWithItsJson()
    {
        string[] question =
        [
            "setpoint",
            "profile.json",
            "--exposure",
            "300",
            "--sky",
            "2",
            "--ambient",
            "15",
            "--max-delta",
            "35",
        ];
        CommandRun text = folder.Command.Run([.. question, "--explain"]).Expect(ExitCodes.Answered);
        JsonElement json = folder.Command.Run([.. question, "--json"]).Expect(ExitCodes.Answered).Json;
        Assert.Equal("setpoint", json.GetProperty("command").GetString());
        Assert.Equal(text.FirstLine, json.GetProperty("sentence").GetString());
        JsonElement advice = json.GetProperty("quantities").GetProperty("setpoint");
        Assert.Equal("°C", advice.GetProperty("unit").GetString());
        Assert.Contains(
            advice.GetProperty("value").GetDouble().ToString("0", CultureInfo.InvariantCulture).Replace('-', '−'),
            text.FirstLine,
            StringComparison.Ordinal
        );
        Assert.True(
            json.GetProperty("quantities").TryGetProperty("setpointTypical", out _)
                && json.GetProperty("quantities").TryGetProperty("setpoint99", out _)
        );
        Assert.True(json.GetProperty("curve").GetArrayLength() > 10);
        JsonElement noise = json.GetProperty("noise");
        Assert.Equal(advice.GetProperty("value").GetDouble(), noise.GetProperty("temperature").GetDouble());
        double[] shares =
        [
            .. noise.GetProperty("terms").EnumerateArray().Select(t => t.GetProperty("share").GetDouble()),
        ];
        Assert.Equal(shares.OrderDescending(), shares);
        Assert.Equal(1, shares.Sum(), 1e-9);
        Assert.Contains("together, typical pixel", text.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("setpoint profile.json --exposure 300")]
    [InlineData("exposure profile.json")]
    public void WithoutASkyASuburbanOneIsAssumedAndTheFlagIsNamed(string command)
    {
        CommandRun run = folder.Command.Run(command.Split(' ')).Expect(ExitCodes.Answered);
        Assert.Contains("a suburban sky, broad band (4.48 e⁻/px/s, assumed)", run.Output, StringComparison.Ordinal);
        Assert.Contains("--sky E", run.Output, StringComparison.Ordinal);
        JsonElement json = folder.Command.Run([.. command.Split(' '), "--json"]).Json;
        JsonElement sky = json.GetProperty("assumptions").EnumerateArray().First();
        Assert.Equal(("sky", "default"), (sky.GetProperty("name").GetString(), sky.GetProperty("source").GetString()));
        Assert.Equal(4.48, sky.GetProperty("value").GetDouble(), 0.005); // 19.5 mag/arcsec², f/5, 3.76 µm, 300 nm
        Assert.Equal(
            "option",
            folder
                .Command.Run([.. command.Split(' '), "--sky", "2", "--json"])
                .Json.GetProperty("assumptions")[0]
                .GetProperty("source")
                .GetString()
        );
    }

    [Theory]
    [InlineData("setpoint profile.json --exposure 300 --three-skies")]
    [InlineData("exposure profile.json --three-skies")]
    public void ThreeSkiesStandSideBySideWhenAskedFor(string command)
    {
        CommandRun run = folder.Command.Run(command.Split(' ')).Expect(ExitCodes.Answered);
        foreach (
            string sky in new[] { "dark sky, broad band", "suburban sky, broad band", "suburban sky, narrow band" }
        )
            Assert.Contains(sky, run.FirstLine, StringComparison.Ordinal);
        Assert.Equal(
            3,
            folder.Command.Run([.. command.Split(' '), "--json"]).Json.GetProperty("skies").GetArrayLength()
        );
        Assert.Contains(
            "Give your own sky or ask for --three-skies, not both.",
            folder.Command.Run([.. command.Split(' '), "--sky", "2"]).Expect(ExitCodes.WrongCommandLine).Error,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("setpoint profile.json --exposure 300 --sky 2 --ambient 15 --max-delta 35")]
    [InlineData("setpoint profile.json --exposure 300 --three-skies")]
    [InlineData("setpoint profile.json --exposure 300 --uncooled --ambient 5")]
    [InlineData("exposure profile.json --three-skies")]
    [InlineData("darks match profile.json --exposure 300 --lights 40 --sky 2")]
    [InlineData("darks plan profile.json --exposure 300 --exposure 60 --exposure 10 --lights 40 --sky 2")]
    [InlineData("shots --cooled --minutes 180")]
    public void AnAnswerHasAtMostFifteenLinesUnlessAllIsAskedFor(string command)
    {
        foreach (string? columns in new[] { null, "100" })
        {
            SensorProfileCommand terminal = folder.Command with
            {
                Environment = new Dictionary<string, string?> { ["COLUMNS"] = columns },
            };
            string[] brief = terminal
                    .Run(command.Split(' '))
                    .Expect(ExitCodes.Answered)
                    .Output.TrimEnd('\n')
                    .Split('\n'),
                whole = terminal.Run([.. command.Split(' '), "--explain"]).Output.TrimEnd('\n').Split('\n');
            Assert.InRange(brief.Length, 3, 15);
            Assert.Equal(whole[0], brief[0]);
            Assert.True(whole.Length > 15);
            Assert.StartsWith("More: --explain (", brief[^1], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void DarksMatchGivesTolerancesAndTheirCause()
    {
        JsonElement json = folder
            .Command.Run(
                "darks",
                "match",
                "profile.json",
                "--exposure",
                "300",
                "--lights",
                "40",
                "--sky",
                "2",
                "--json"
            )
            .Expect(ExitCodes.Answered)
            .Json;
        Assert.Equal("darks match", json.GetProperty("command").GetString());
        JsonElement quantities = json.GetProperty("quantities");
        Assert.True(quantities.GetProperty("toleranceWarmer").GetProperty("value").GetDouble() > 0);
        Assert.True(
            quantities.TryGetProperty("toleranceColder", out _) && quantities.TryGetProperty("toleranceExposure", out _)
        );
        Assert.Contains(
            json.GetProperty("bindingCause").GetString(),
            new[] { "typical", "hot-pixels", "glow", "level" }
        );
    }

    [Fact]
    public void WhatWasNotSaidOfTheStackIsAssumedAloud()
    {
        JsonElement plan = folder
            .Command.Run("darks", "plan", "profile.json", "--lights", "40", "--rejection", "sigma-clip", "--json")
            .Expect(ExitCodes.Answered)
            .Json;
        JsonElement[] assumed = [.. plan.GetProperty("assumptions").EnumerateArray()];
        Assert.Equal(
            [
                ("sky", "default"),
                ("ditherPositions", "default"),
                ("rejection", "option"),
                ("acceptedLoss", "default"),
                ("smoothScale", "default"),
                ("exposure", "default"),
                ("temperature", "profile"),
            ],
            assumed.Select(a => (a.GetProperty("name").GetString()!, a.GetProperty("source").GetString()!))
        );
        Assert.Equal(
            plan.GetProperty("masters")[0].GetProperty("temperature").GetDouble(),
            assumed[^1].GetProperty("value").GetDouble()
        );
        Assert.StartsWith(
            "No temperature was given: planned for the set point that follows from the profile, ",
            plan.GetProperty("reason").GetString(),
            StringComparison.Ordinal
        );
        JsonElement match = folder
            .Command.Run("darks", "match", "profile.json", "--exposure", "300", "--lights", "40", "--json")
            .Json;
        Assert.Equal(
            (20, "sigma-clip"),
            (
                match.GetProperty("dithered").GetProperty("ditherPositions").GetInt32(),
                match.GetProperty("dithered").GetProperty("rejection").GetString()
            )
        );
        Assert.Contains(
            "--rejection knows none, sigma-clip, winsorised, median, not 'best'.",
            folder
                .Command.Run("darks", "plan", "profile.json", "--rejection", "best")
                .Expect(ExitCodes.WrongCommandLine)
                .Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void DarksPlanListsMastersWithReasonsAndWritesThemAsATable()
    {
        string[] question =
        [
            "darks",
            "plan",
            "profile.json",
            "--exposure",
            "300",
            "--exposure",
            "60",
            "--lights",
            "40",
            "--sky",
            "2",
        ];
        CommandRun text = folder.Command.Run([.. question, "--csv", "plan.csv"]).Expect(ExitCodes.Answered);
        Assert.StartsWith("Shoot ", text.FirstLine, StringComparison.Ordinal);
        Assert.StartsWith(
            "exposure_s,temperature_c,gain,",
            File.ReadAllText(folder["plan.csv"]),
            StringComparison.Ordinal
        );
        JsonElement masters = folder
            .Command.Run([.. question, "--json"])
            .Expect(ExitCodes.Answered)
            .Json.GetProperty("masters");
        Assert.Equal([60, 300], masters.EnumerateArray().Select(m => m.GetProperty("exposure").GetDouble()));
        Assert.All(masters.EnumerateArray(), m =>
            Assert.True(m.GetProperty("frames").GetInt32() > 0 && m.GetProperty("reason").GetString()!.Length > 0)
        );
        Assert.Contains(
            "plan.csv exists",
            folder.Command.Run([.. question, "--csv", "plan.csv"]).Expect(ExitCodes.UnwritableOutput).Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ANightThatTheProfileReachesInPartIsPlannedInPart()
    {
        File.WriteAllText(folder["night.csv"], "time,celsius\n21:00,40\n22:00,38\n23:00,4.5\n00:00,4\n01:00,3.5\n");
        string[] question =
        [
            "darks",
            "plan",
            "profile.json",
            "--exposure",
            "300",
            "--lights",
            "50",
            "--dithers",
            "25",
            "--sky",
            "2",
            "--uncooled",
            "--night",
            "night.csv",
        ];
        CommandRun text = folder.Command.Run(question).Expect(ExitCodes.CannotTell);
        Assert.StartsWith("Shoot ", text.FirstLine, StringComparison.Ordinal);
        Assert.EndsWith(
            "cannot tell for 20 lights (300 s between 38 °C and 40 °C).",
            text.FirstLine,
            StringComparison.Ordinal
        );
        JsonElement json = folder.Command.Run([.. question, "--json"]).Expect(ExitCodes.CannotTell).Json;
        Assert.Equal(20, json.GetProperty("unplanned")[0].GetProperty("lights").GetInt32());
        Assert.Equal(12, json.GetProperty("settling").EnumerateArray().Sum(s => s.GetProperty("frames").GetInt32()));
        Assert.All(json.GetProperty("masters").EnumerateArray(), m =>
            Assert.InRange(m.GetProperty("temperature").GetDouble(), 3, 5)
        );
    }

    [Fact] // seen: of the same lights, match said 40 darks and plan said 5: one had measured the sky, one assumed it
    public void PlanAndMatchTakeTheSkyFromTheSameLights()
    {
        CameraProfile tarn = ProfileFile.Read(folder["profile.json"]);
        ProfileFile.Write(
            folder["biased.json"],
            tarn with
            {
                Modes =
                [
                    tarn.Modes[0] with
                    {
                        BiasLevel = new Measurement(500, 0.1, "ADU", 40, "default of the simulator"),
                    },
                ],
            }
        );
        SimulatedNight.Write(folder["darks"], SimulatedNight.DarksOnly);
        SimulatedNight.Write(
            folder["lights"],
            SimulatedNight.DarksOnly.Replace(
                "\"kind\": \"dark\"",
                "\"kind\": \"light\", \"level\": 6000",
                StringComparison.Ordinal
            )
        );
        double Sky(params string[] question)
        {
            JsonElement sky = folder
                .Command.Run([.. question, "--json"])
                .Json.GetProperty("assumptions")
                .EnumerateArray()
                .Single(a => a.GetProperty("name").GetString() == "sky");
            Assert.Equal("option", sky.GetProperty("source").GetString());
            return sky.GetProperty("value").GetDouble();
        }
        double planned = Sky("darks", "plan", "biased.json", "--lights", "lights"),
            matched = Sky("darks", "match", "--lights", "lights", "--darks", "darks", "--profile", "biased.json");
        Assert.Equal(matched, planned, 0.1 * matched);
    }

    [Fact]
    public void LightsAndDarksOnDiskGetAVerdict()
    {
        SimulatedNight.Write(folder["darks"], SimulatedNight.DarksOnly);
        SimulatedNight.Write(
            folder["lights"],
            SimulatedNight.DarksOnly.Replace(
                "\"kind\": \"dark\"",
                "\"kind\": \"light\", \"level\": 600",
                StringComparison.Ordinal
            )
        );
        CommandRun run = folder.Command.Run(
            "darks",
            "match",
            "--lights",
            "lights",
            "--darks",
            "darks",
            "--profile",
            "profile.json",
            "--sky",
            "2",
            "--json"
        );
        JsonElement matches = run.Json.GetProperty("matches");
        Assert.Equal(2, matches.GetArrayLength());
        Assert.All(matches.EnumerateArray(), m =>
            Assert.Contains(
                m.GetProperty("verdict").GetString(),
                new[] { "fits", "usable", "does-not-fit", "cannot-tell" }
            )
        );
        Assert.Equal(
            run.Json.GetProperty("verdict").GetString() == "cannot-tell" ? ExitCodes.CannotTell : ExitCodes.Answered,
            run.ExitCode
        );
        Assert.Equal(4, run.Json.GetProperty("pairs").GetArrayLength());
        CommandRun page = folder.Command.Run(
            "darks",
            "match",
            "--lights",
            "lights",
            "--darks",
            "darks",
            "--profile",
            "profile.json",
            "--sky",
            "2",
            "--page",
            "pages"
        );
        Assert.Equal(
            ["dark-match.csv", "dark-match.html", "dark-match.pdf"],
            Directory.GetFiles(folder["pages"]).Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)
        );
        Assert.Equal(1 + 4, File.ReadAllLines(folder["pages/dark-match.csv"]).Length);
        Assert.Contains(
            page.FirstLine,
            System.Net.WebUtility.HtmlDecode(File.ReadAllText(folder["pages/dark-match.html"])).Replace('\u00A0', ' '),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "lies in",
            folder
                .Command.Run(
                    "darks",
                    "match",
                    "--lights",
                    "lights",
                    "--darks",
                    "darks",
                    "--profile",
                    "profile.json",
                    "--page",
                    "darks/pages"
                )
                .Expect(ExitCodes.WrongCommandLine)
                .Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnswersAreTheSameBytesUnderAGermanLocaleAndFitFortyColumns()
    {
        string[] question =
        [
            "setpoint",
            "profile.json",
            "--exposure",
            "300.5",
            "--sky",
            "1.5",
            "--ambient",
            "-8.5",
            "--max-delta",
            "35",
        ];
        SensorProfileCommand german = folder.Command with
        {
            Environment = new Dictionary<string, string?> { ["LANG"] = "de_DE.UTF-8", ["LC_ALL"] = "de_DE.UTF-8" },
        };
        Assert.Equal(folder.Command.Run(question).Expect(0).Output, german.Run(question).Output);
        Assert.Equal(folder.Command.Run([.. question, "--json"]).Output, german.Run([.. question, "--json"]).Output);
        SensorProfileCommand narrow = folder.Command with
        {
            Environment = new Dictionary<string, string?> { ["COLUMNS"] = "40" },
        };
        Assert.All(narrow.Run(question).Output.Split('\n'), line => Assert.InRange(line.Length, 0, 40));
    }
}
