using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Tests.Profiles.Files;

public class ProfileSchemaTests
{
    private static readonly JsonSchema _schema = JsonSchema.FromText(ProfileSchema.Json());
    private static readonly EvaluationOptions _options = new()
    {
        OutputFormat = OutputFormat.List,
        RequireFormatValidation = true,
    };

    private static readonly JsonSerializerOptions _layout = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    [Fact]
    public void IsItselfAValidDraft202012Schema()
    {
        JsonNode schema = JsonNode.Parse(ProfileSchema.Json())!;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", (string?)schema["$schema"]);
        Assert.Equal("urn:sensorprofile:profile:1", (string?)schema["$id"]);
        Assert.Equal("Camera profile", (string?)schema["title"]);
        Assert.True(MetaSchemas.Draft202012.Evaluate(schema, _options).IsValid);
    }

    [Fact]
    public void AcceptsAProfileWithEveryFieldFilled() => Assert.Empty(Errors(FilledProfile.Build()));

    [Fact]
    public void AcceptsAProfileInWhichNothingCouldBeMeasured() =>
        Assert.Empty(Errors(new CameraProfile { Modes = [new ModeProfile()] }));

    [Theory]
    [InlineData("/modes/0/readNoise/value", "\"1.5\"")] // text where a number is meant
    [InlineData("/modes/0/readNoise/standardUncertainty", "-0.1")] // an uncertainty is never negative
    [InlineData("/modes/0/readNoise", "1.5")] // a bare number is no quantity
    [InlineData("/findings/0/severity", "\"Warning\"")] // written in lower case
    [InlineData("/schemaVersion", "2")]
    [InlineData("/createdUtc", "\"yesterday\"")]
    [InlineData("/modes", "null")]
    public void RefusesADocumentThatBreaksTheContract(string place, string wrong)
    {
        JsonNode document = JsonNode.Parse(ProfileFile.ToUtf8(FilledProfile.Build()))!;
        string[] names = place.Split('/', StringSplitOptions.RemoveEmptyEntries);
        JsonNode parent = names[..^1]
            .Aggregate(document, (node, name) => int.TryParse(name, out int index) ? node[index]! : node[name]!);
        parent[names[^1]] = JsonNode.Parse(wrong);

        Assert.False(_schema.Evaluate(document, _options).IsValid);
    }

    [Fact]
    public void RefusesADocumentThatLacksAField()
    {
        JsonNode document = JsonNode.Parse(ProfileFile.ToUtf8(FilledProfile.Build()))!;
        document["modes"]![0]!.AsObject().Remove("gain");

        Assert.False(_schema.Evaluate(document, _options).IsValid);
    }

    [Fact]
    public void AcceptsFieldsThatALaterVersionMayAdd()
    {
        JsonNode document = JsonNode.Parse(ProfileFile.ToUtf8(FilledProfile.Build()))!;
        document["modes"]![0]!["persistence"] = 3;

        Assert.True(_schema.Evaluate(document, _options).IsValid);
    }

    [Fact]
    public void DescribesEveryFieldInTheWordsOfTheCode()
    {
        SortedDictionary<string, string> expected = CodeSummaries.Of(ProfileDefaults.Types);
        string proposal = Path.Combine(AppContext.BaseDirectory, "descriptions.json");
        File.WriteAllText(proposal, JsonSerializer.Serialize(expected, _layout) + "\n");

        Assert.True(
            expected.SequenceEqual(ProfileSchema.Descriptions()),
            $"The records' summaries have changed: review {proposal} and copy it to src/SensorProfile/Profiles/descriptions.json."
        );
    }

    private static List<string> Errors(CameraProfile profile)
    {
        EvaluationResults results = _schema.Evaluate(JsonNode.Parse(ProfileFile.ToUtf8(profile)), _options);
        return
        [
            .. results
                .Details.Where(detail => detail.Errors is not null)
                .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))
                .Where(_ => !results.IsValid),
        ];
    }
}
