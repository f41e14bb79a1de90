using System.Text.Json.Nodes;
using Json.Schema;
using SensorProfile.Cli.Printing;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Tests;

/// <summary>
/// Every answer has a schema (that the answers keep to it is seen wherever a test reads one,
/// <see cref="AnswerContract"/>).
/// </summary>
public class AnswerSchemaTests
{
    public static TheoryData<string> Commands => [.. AnswerShapes.All.Select(s => s.Command)];

    [Theory]
    [MemberData(nameof(Commands))]
    public void IsAValidSchemaWithoutALooseEnd(string command)
    {
        JsonNode schema = JsonNode.Parse(AnswerSchema.Json(Shape(command)))!;
        Assert.True(MetaSchemas.Draft202012.Evaluate(schema).IsValid);
        string[] records = [.. schema["$defs"]!.AsObject().Select(d => "#/$defs/" + d.Key)];
        Assert.Empty(References(schema).Except(records));
    }

    [Fact]
    public void EveryCommandThatAnswersHasOne() =>
        Assert.Equal(
            CommandList.Names.Except(["schema", "desk", "completion", "man", "help"]).Order(),
            AnswerShapes.All.Select(s => s.Command).Order()
        );

    [Fact]
    public void IsPrintedByTheCommandsName()
    {
        using TemporaryFolder folder = new();
        JsonNode schema = JsonNode.Parse(folder.Command.Run("schema", "darks", "match").Expect(0).Output)!;
        Assert.Equal("Answer of darks match", (string?)schema["title"]);
        CommandRun wrong = folder.Command.Run("schema", "darks", "mach").Expect(2);
        Assert.Contains("darks plan, darks match, darks check", wrong.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("quantities/darks/value", "\"many\"")]
    [InlineData("verdict", "\"perhaps\"")]
    [InlineData("findings", "null")]
    [InlineData("stacks/0/stack/lights", "4.5")]
    public void AnAnswerThatBreaksItIsSeen(string place, string wrong)
    {
        JsonNode answer = JsonNode.Parse(
            """
            {
              "command": "darks plan", "sentence": "S.", "verdict": "answered", "reason": "",
              "quantities": { "darks": { "value": 8, "standardUncertainty": 1, "unit": "frames", "samples": 1, "method": "m" } },
              "stacks": [{ "stack": { "lights": 40 } }],
              "findings": [], "cautions": [], "rulesOfThumb": []
            }
            """
        )!;
        string at = "/" + place;
        Assert.DoesNotContain(AnswerContract.Breaches(answer), b => b.Contains(at, StringComparison.Ordinal));
        string[] names = place.Split('/');
        JsonNode parent = names[..^1]
            .Aggregate(answer, (node, name) => int.TryParse(name, out int index) ? node[index]! : node[name]!);
        parent[names[^1]] = JsonNode.Parse(wrong);
        Assert.Contains(AnswerContract.Breaches(answer), b => b.Contains(at, StringComparison.Ordinal));
    }

    /// <summary>The demo takes a minute to run: its answer, from the example's profile.</summary>
    [Fact]
    public void TheDemosAnswerKeepsToIt()
    {
        AnswerDocument decision = new()
        {
            Command = "setpoint",
            Sentence = "Run it cold.",
            Verdict = "answered",
        };
        AnswerDocument demo = DemoDocument.Compose(
            ProfileFile.Read(Checkout.File("reports/profile.json")),
            "sensorprofile-demo",
            decision,
            decision,
            decision
        );
        Assert.Empty(AnswerContract.Breaches(JsonNode.Parse(AnswerJson.Of(demo))!));
    }

    /// <summary>Members within records too.</summary>
    [Fact]
    public void AMemberThatItDoesNotNameIsSeen()
    {
        JsonNode answer = JsonNode.Parse(
            AnswerJson.Of(
                new AnswerDocument
                {
                    Command = "shots",
                    Sentence = "S.",
                    Verdict = "answered",
                }
            )
        )!;
        Assert.Empty(AnswerContract.Breaches(answer));
        answer["findings"] = JsonNode.Parse(
            """[{ "code": "no-flats", "severity": "note", "message": "M.", "frames": [] }]"""
        );
        Assert.Empty(AnswerContract.Breaches(answer));
        answer["findings"]![0]!["colour"] = "red";
        Assert.Contains(AnswerContract.Breaches(answer), b =>
            b.Contains("/findings/0/colour", StringComparison.Ordinal)
        );
    }

    private static AnswerShape Shape(string command) => AnswerShapes.All.Single(s => s.Command == command);

    private static IEnumerable<string> References(JsonNode? node) =>
        node switch
        {
            JsonObject members => members.SelectMany(m =>
                m is { Key: "$ref", Value: JsonValue pointer } ? [(string)pointer!] : References(m.Value)
            ),
            JsonArray items => items.SelectMany(References),
            _ => [],
        };
}
