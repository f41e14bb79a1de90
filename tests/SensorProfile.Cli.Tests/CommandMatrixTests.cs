using System.Text.Json;
using System.Text.Json.Nodes;
using SensorProfile.Cli.Printing;
using SensorProfile.Cli.Tests.Running;
using Xunit.Abstractions;

namespace SensorProfile.Cli.Tests;

/// <summary>
/// Every command with every form of answer that it has: none ends in an internal error, and what is asked for is there.
/// </summary>
public sealed class CommandMatrixTests(CharacterisedNight night, ITestOutputHelper output)
    : IClassFixture<CharacterisedNight>
{
    private const string Profile = "results/profile.json",
        Master = "night/dark_-10C_300s_001.fits";

    // {0} stands for a place that is free; --csv and --page take one each, and --json goes with every other form.
    private static readonly string[][] Forms =
    [
        ["shots", "--json", "--csv {0}.csv", "--page {0}"],
        ["shots --have night", "--json", "--csv {0}.csv", "--page {0}"],
        ["survey night", "--json", "--table {0}.csv"],
        ["characterise night --quick --out {0}", "--json"],
        ["report results/profile.json --out {0}", "--json"],
        [$"setpoint {Profile} --exposure 300", "--json", "--page {0}"],
        [$"setpoint {Profile} --exposure 300 --sky 2 --ambient 15 --max-delta 35", "--json", "--page {0}"],
        [$"exposure {Profile} --sky 0.5", "--json", "--page {0}"],
        [$"darks plan {Profile} --exposure 300 --lights 40", "--json", "--csv {0}.csv", "--page {0}"],
        [$"darks match {Profile} --exposure 300 --lights 40", "--json", "--page {0}"],
        [$"darks plan {Profile} --exposure 300 --lights 40 --smooth 64", "--json"],
        [$"darks match {Profile} --exposure 300 --lights 40 --smooth 64", "--json", "--page {0}"],
        [$"darks check {Master} --against night --profile {Profile}", "--json", "--out {0}"],
        [$"darks check {Master} --against night --profile {Profile} --smooth 64", "--json"],
        ["report results/profile.json --smooth 64 --out {0}", "--json"],
        [$"flats plan {Profile}", "--json", "--explain", "--csv {0}.csv", "--page {0}"],
        [
            $"flats plan {Profile} --exposure 60 --lights 200 --dithers 20 --level 50",
            "--json",
            "--csv {0}.csv",
            "--page {0}",
        ],
        [$"darks predict {Profile} --temperature -5 --exposure 180 --out {{0}}.fits", "--json"],
        [$"drift results later", "--json", "--out {0}"],
        ["fleet fleet", "--json"],
        ["setup", "--json"],
        ["simulate camera.json --out {0}", "--json"],
    ];

    private const string Brightness = "--sky-brightness 21.5 --focal-ratio 5 --pixel-size 3.76";

    // Questions that nobody should ask, but somebody will: air colder than the advice, next to no loss, one light and ten
    // thousand, a millisecond and a day, profiles that lack a part.
    private static readonly string[] Strange =
    [
        $"setpoint {Profile} --exposure 300 --ambient -30 --max-delta 35",
        $"setpoint {Profile} --exposure 300 --ambient -12 --max-delta 35",
        $"setpoint {Profile} --exposure 0.001",
        $"setpoint {Profile} --exposure 100000",
        $"setpoint {Profile} --exposure 300 --loss 0.01",
        $"setpoint {Profile} --exposure 300 --loss 99",
        $"setpoint {Profile} --exposure 300 --uncooled",
        $"exposure {Profile} --sky 0.000001",
        $"exposure {Profile} --loss 0.01",
        $"darks match {Profile} --exposure 300 --lights 1",
        $"darks match {Profile} --exposure 300 --lights 10000",
        $"darks match {Profile} --exposure 0.001 --lights 40",
        $"darks match {Profile} --exposure 100000 --lights 40",
        $"darks match {Profile} --exposure 300 --lights 40 --loss 0.01",
        $"darks plan {Profile} --exposure 300 --lights 1",
        $"darks plan {Profile} --exposure 300 --lights 10000",
        $"darks plan {Profile} --exposure 0.001 --lights 40",
        $"darks plan {Profile} --exposure 100000 --lights 40",
        $"darks plan {Profile} --exposure 300 --lights 40 --loss 0.01",
        $"darks plan {Profile} --exposure 300 --lights 40 --temperature -60",
        $"darks match {Profile} --exposure 300 --lights 40 --smooth 10000",
        $"flats plan {Profile} --lights 1",
        $"flats plan {Profile} --lights 10000",
        $"flats plan {Profile} --exposure 0.001",
        $"flats plan {Profile} --exposure 100000",
        $"flats plan {Profile} --loss 0.01",
        $"flats plan {Profile} --loss 99",
        $"flats plan {Profile} --level 0.001",
        $"flats plan {Profile} --level 100 --dark-flats 1",
        $"flats plan {Profile} --temperature -60",
        $"darks check {Master} --against night --profile {Profile} --lights 1",
        $"darks check {Master} --against night --profile {Profile} --lights 10000 --dithers 20 --rejects",
        $"darks check {Master} --against night --profile {Profile} --loss 0.01 {Brightness}",
        $"drift results later --exposure 0.001 --lights 10000 {Brightness}",
        .. new[] { "no-dark", "no-gain", "one-temperature" }.SelectMany(lack =>
            new[]
            {
                $"setpoint {lack}.json --exposure 300",
                $"exposure {lack}.json --sky 0.5",
                $"darks match {lack}.json --exposure 300 --lights 40",
                $"darks plan {lack}.json --exposure 300 --lights 40",
                $"flats plan {lack}.json",
                $"darks predict {lack}.json --temperature -5 --exposure 180 --out {{0}}.fits",
                $"darks check {Master} --against night --profile {lack}.json",
                $"drift {Profile} {lack}.json",
            }
        ),
    ];

    public static TheoryData<string> StrangeLines => [.. Strange];

    [Theory]
    [MemberData(nameof(StrangeLines))]
    public void StrangeQuestionsEndInASentence(string line)
    {
        TemporaryFolder folder = night.Folder;
        Prepare(folder);
        string place = "place-" + Guid.NewGuid().ToString("N")[..8];
        string[] arguments = string.Format(System.Globalization.CultureInfo.InvariantCulture, line, place).Split(' ');
        CommandRun run = folder.Command.Run([.. arguments, "--json"]);
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, $"{run.ExitCode}: {run.Error}");
        string sentence = run.Json.GetProperty("sentence").GetString()!;
        output.WriteLine($"{run.ExitCode} {line}\n  {sentence}");
        Assert.Matches(@"^\p{Lu}.*[.)]$", sentence);
        Assert.DoesNotMatch(@"NaN|∞|Infinity|−0 |(?<![0-9.,])0 (s|frames|darks|flats|°C warmer)\b", sentence);
    }

    public static TheoryData<string> Lines
    {
        get
        {
            TheoryData<string> lines = [];
            foreach (string[] form in Forms)
            {
                lines.Add(form[0]);
                foreach (string option in form.Skip(1))
                    lines.Add($"{form[0]} {option}");
                if (form.Length > 2)
                    lines.Add(string.Join(' ', form));
            }
            return lines;
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void EndsInAnAnswer(string line)
    {
        TemporaryFolder folder = night.Folder;
        Prepare(folder);
        string place = "place-" + Guid.NewGuid().ToString("N")[..8];
        string[] arguments = string.Format(System.Globalization.CultureInfo.InvariantCulture, line, place).Split(' ');
        CommandRun run = folder.Command.Run(arguments);
        Assert.True(run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell, $"{run.ExitCode}: {run.Error}");
        if (arguments.Contains("--json"))
        {
            JsonElement json = run.Json;
            Assert.NotEqual("", json.GetProperty("sentence").GetString());
            Assert.Equal(JsonValueKind.Array, json.GetProperty("findings").ValueKind);
        }
        else
            Assert.NotEqual("", run.FirstLine);
        foreach (string written in arguments.Where(a => a.StartsWith(place, StringComparison.Ordinal)))
            Assert.True(Path.Exists(folder[written]), $"{written} was not written.");
    }

    /// <summary>So that every answer is held to its schema; that of the demo, which takes a minute, elsewhere.</summary>
    [Fact]
    public void EveryCommandThatAnswersIsHere() =>
        Assert.All(AnswerShapes.All.Select(shape => shape.Command).Except(["demo"]), command =>
            Assert.Contains(Forms, form =>
                form[0].StartsWith(command + " ", StringComparison.Ordinal)
                || (form[0] == command && form.Contains("--json"))
            )
        );

    public static TheoryData<string> PlainLines =>
        [.. Forms.Select(form => form[0]).DistinctBy(line => string.Join(' ', line.Split(' ').Take(2)))];

    /// <summary>Most tests run commands in a process that has run others: its answers are those of a process of its own.</summary>
    [Theory]
    [MemberData(nameof(PlainLines))]
    public void AProcessOfItsOwnAnswersTheSame(string line)
    {
        TemporaryFolder folder = night.Folder;
        Prepare(folder);
        var surroundings = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = "1949904000" };
        SensorProfileCommand command = folder.Command with { Environment = surroundings };
        string[] Arguments() =>
            string.Format(
                    System.Globalization.CultureInfo.InvariantCulture,
                    line,
                    "place-" + Guid.NewGuid().ToString("N")[..8]
                )
                .Split(' ');
        string[] one = Arguments(),
            other = Arguments();
        CommandRun own = (command with { OnItsOwn = true }).Run(one),
            warm = command.Run(other);
        string Told(string text, string[] arguments) =>
            arguments
                .Where(a => a.StartsWith("place-", StringComparison.Ordinal))
                .Aggregate(text, (told, place) => told.Replace(place, "place", StringComparison.Ordinal));
        Assert.Equal(own.ExitCode, warm.ExitCode);
        Assert.Equal(Told(own.Output, one), Told(warm.Output, other));
        foreach ((string First, string Second) in one.Zip(other).Where(pair => pair.First != pair.Second))
            Assert.Equal(Written(folder[First]), Written(folder[Second]));
    }

    private static SortedDictionary<string, string> Written(string place)
    {
        if (Directory.Exists(place))
            return TemporaryFolder.Digests(place);
        return new SortedDictionary<string, string>
        {
            [""] = Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(place))),
        };
    }

    private static void Prepare(TemporaryFolder folder)
    {
        if (!Directory.Exists(folder["later"]))
        {
            Directory.CreateDirectory(folder["later"]);
            // the same numbers a year later: enough for every form of the answer
            string profile = File.ReadAllText(folder[Profile]);
            int at = profile.IndexOf("\"createdUtc\": \"", StringComparison.Ordinal) + "\"createdUtc\": \"".Length;
            int year = int.Parse(profile.AsSpan(at, 4), System.Globalization.CultureInfo.InvariantCulture);
            File.WriteAllText(folder["later/profile.json"], $"{profile[..at]}{year + 1}{profile[(at + 4)..]}");
        }
        if (!Directory.Exists(folder["fleet"]))
        {
            Directory.CreateDirectory(folder["fleet/tarn"]);
            File.Copy(folder[Profile], folder["fleet/tarn/profile.json"]);
        }
        if (!File.Exists(folder["one-temperature.json"]))
        {
            Lacking("no-dark", mode => mode["darkCurrent"] = null);
            Lacking("no-gain", mode =>
                mode["gain"] = mode["readNoise"] = mode["fullWell"] = mode["darkCurrent"] = null
            );
            Lacking("one-temperature", mode =>
            {
                JsonObject dark = mode["darkCurrent"]!.AsObject();
                JsonNode point = dark["points"]![0]!;
                dark["points"] = new JsonArray(point.DeepClone());
                dark["models"] = new JsonArray();
                dark["selected"] = dark["doublingTemperature"] = null;
                dark["measuredRange"] = new JsonArray(
                    point["temperature"]!.DeepClone(),
                    point["temperature"]!.DeepClone()
                );
            });
        }
        void Lacking(string name, Action<JsonObject> change)
        {
            JsonNode whole = JsonNode.Parse(File.ReadAllText(folder[Profile]))!;
            foreach (JsonNode? mode in whole["modes"]!.AsArray())
                change(mode!.AsObject());
            File.WriteAllText(folder[name + ".json"], whole.ToJsonString());
        }
        if (!File.Exists(folder["camera.json"]))
            File.WriteAllText(folder["camera.json"], SimulatedNight.DarksOnly);
    }
}
