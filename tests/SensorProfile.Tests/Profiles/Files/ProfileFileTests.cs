using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json.Nodes;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Tests.Profiles.Files;

public sealed class ProfileFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("profile-file-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string PathOf(string name) => Path.Combine(_folder, name);

    [Fact]
    public void AProfileThatIsReadAndWrittenAgainHasTheSameBytes()
    {
        ProfileFile.Write(PathOf("first.json"), FilledProfile.Build());
        ProfileFile.Write(PathOf("second ü.json"), ProfileFile.Read(PathOf("first.json")));

        Assert.Equal(File.ReadAllBytes(PathOf("first.json")), File.ReadAllBytes(PathOf("second ü.json")));
        Assert.Equal(["first.json", "second ü.json"], Directory.GetFiles(_folder).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void EveryFieldSurvives()
    {
        // Records compare lists by reference, so the comparison goes through the text, and the text is shown to hold
        // every field.
        string json = Encoding.UTF8.GetString(ProfileFile.ToUtf8(FilledProfile.Build()));
        Assert.DoesNotContain("null", json, StringComparison.Ordinal);
        Assert.DoesNotContain("[]", json, StringComparison.Ordinal);
        Assert.Equal(
            json,
            Encoding.UTF8.GetString(ProfileFile.ToUtf8(ProfileFile.Parse(Encoding.UTF8.GetBytes(json), "p.json")))
        );
    }

    [Fact]
    public void NamesAreCamelCaseSeveritiesAreWordsAndWhatIsMissingIsNull()
    {
        var profile = new CameraProfile
        {
            Modes = [new ModeProfile { BiasLevel = new Measurement(500.25, 0.5, "ADU", 16, "mean of bias frames") }],
            Findings = [new Finding("flats-missing", Severity.Refusal, "There are no flats.")],
        };
        JsonNode json = JsonNode.Parse(ProfileFile.ToUtf8(profile))!;
        Assert.Equal(
            """{"value":500.25,"standardUncertainty":0.5,"unit":"ADU","samples":16,"method":"mean of bias frames"}""",
            json["modes"]![0]!["biasLevel"]!.ToJsonString()
        );
        Assert.True(json["modes"]![0]!.AsObject().ContainsKey("gain"));
        Assert.Null(json["modes"]![0]!["gain"]);
        Assert.Equal("refusal", (string?)json["findings"]![0]!["severity"]);
    }

    [Fact]
    public void TheBytesDoNotDependOnTheCulture()
    {
        byte[] invariant = ProfileFile.ToUtf8(FilledProfile.Build());
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(invariant, ProfileFile.ToUtf8(FilledProfile.Build()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void FieldsThatAnEarlierVersionDidNotHaveTakeTheirDefaults()
    {
        CameraProfile profile = Parse(
            """
            { "schemaVersion": 1, "modes": [ { "settings": { "gain": 100 }, "readNoise": { "value": 1.5, "standardUncertainty": 0.1 },
              "fixedPattern": { "thresholds": { "hotRate": 0.1 } } } ] }
            """
        );
        Assert.Equal("unnamed camera", profile.Camera.Name);
        Assert.Equal(1, profile.Camera.CodeStep);
        Assert.Empty(profile.Findings);
        Assert.Empty(profile.Frames.Session);
        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.Equal(new Measurement(1.5, 0.1, "", 0, ""), mode.ReadNoise);
        Assert.Equal("1x1", mode.Settings.Binning);
        Assert.Empty(mode.Channels);
        Assert.Null(mode.DarkCurrent);
        Assert.Equal(6, mode.FixedPattern!.Thresholds!.Significance);
        Assert.Empty(mode.FixedPattern.Glow);
    }

    [Fact]
    public void UnknownFieldsAByteOrderMarkCommentsAndTrailingCommasAreAccepted() =>
        Assert.Equal(
            "Tarn-9M",
            Parse(
                "\uFEFF{ \"schemaVersion\": 1, /* by hand */ \"moon\": [1], \"camera\": { \"name\": \"Tarn-9M\", \"owner\": {} }, }"
            ).Camera.Name
        );

    [Theory]
    [InlineData(
        """{ "schemaVersion": 2 }""",
        "p.json, $.schemaVersion: the profile was written by a later version (schema 2; this "
            + "program knows up to 1). Read it with that version, or install the newer program."
    )]
    [InlineData(
        """{ "camera": {} }""",
        "p.json: this is JSON, but no camera profile: it has no schemaVersion. Give the profile.json that a characterisation wrote."
    )]
    [InlineData(
        "[]",
        "p.json: this is JSON, but no camera profile: it has no schemaVersion. Give the profile.json that a characterisation wrote."
    )]
    public void AnotherDocumentIsRefusedWithTheWayOut(string json, string expected) =>
        Assert.Equal(expected, Assert.Throws<ProfileFormatException>(() => Parse(json)).Message);

    [Theory]
    [InlineData(
        "{ \"schemaVersion\": 1,\n \"modes\": [\n {}, { \"settings\": { },\n \"gain\": { "
            + "\"value\": \"0.8\", \"standardUncertainty\": 0 } } ] }",
        "$.modes[1].gain.value",
        4
    )]
    [InlineData("{ \"schemaVersion\": 1,\n \"modes\": [ { \"gain\":\n { \"value\": 0.8 } } ] }", "$.modes[0].gain", 3)]
    [InlineData("{ \"schemaVersion\": 1,\n \"modes\": null }", "$.modes", 2)]
    [InlineData("{ \"schemaVersion\": 1,\n \"modes\": [ {},\n null ] }", "$.modes[1]", 3)]
    [InlineData(
        "{ \"schemaVersion\": 1,\n\n \"findings\": [ { \"message\": \"m\", \"severity\": \"grave\" } ] }",
        "$.findings[0].severity",
        3
    )]
    [InlineData("{ \"schemaVersion\": 1,\n \"modes\": [\n", null, 3)]
    public void AnErrorNamesTheFileThePlaceAndTheLine(string json, string? place, long line)
    {
        ProfileFormatException problem = Assert.Throws<ProfileFormatException>(() => Parse(json));
        Assert.Equal(("p.json", place, line), (problem.File, problem.Place, problem.Line));
        Assert.StartsWith($"p.json, line {line}", problem.Message, StringComparison.Ordinal);
        Assert.EndsWith("characterise the frames again.", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("LineNumber", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ANumberThatIsNotFiniteIsNeverWritten(double wrong)
    {
        ProfileFile.Write(PathOf("p.json"), new CameraProfile());
        byte[] before = File.ReadAllBytes(PathOf("p.json"));
        var profile = new CameraProfile
        {
            Modes = [new ModeProfile { Gain = new Measurement(0.8, wrong, "e-/ADU", 1, "") }],
        };

        ArgumentException problem = Assert.Throws<ArgumentException>(() =>
            ProfileFile.Write(PathOf("p.json"), profile)
        );
        Assert.StartsWith(
            "$.modes[0].gain.standardUncertainty is not a finite number",
            problem.Message,
            StringComparison.Ordinal
        );
        Assert.Equal(before, File.ReadAllBytes(PathOf("p.json")));
        Assert.Single(Directory.GetFiles(_folder));
    }

    [Fact]
    public void AWriteThatFailsHalfWayLeavesTheOldFileAndNothingElse()
    {
        File.WriteAllText(PathOf("p.json"), "old");
        Assert.Throws<IOException>(() => AtomicFile.Write(PathOf("p.json"), stream =>
            {
                stream.WriteByte(1);
                throw new IOException("No space left on device");
            }));
        Assert.Equal("old", File.ReadAllText(PathOf("p.json")));
        Assert.Single(Directory.GetFiles(_folder));
    }

    [Fact]
    public void EveryRecordOfTheProfileIsKnownToTheDefaults()
    {
        // Walks the types that a CameraProfile reaches; a record that is added without an entry is named here.
        var reached = new HashSet<Type>();
        void Reach(Type type)
        {
            type = Nullable.GetUnderlyingType(type) ?? type;
            if (type.IsGenericType)
                Reach(type.GetGenericArguments()[0]);
            else if (type.Assembly == typeof(CameraProfile).Assembly && !type.IsEnum && reached.Add(type))
                foreach (PropertyInfo property in ProfileProperties.Find(type))
                    Reach(property.PropertyType);
        }
        Reach(typeof(CameraProfile));
        Assert.Equal(reached.Select(t => t.Name).Order(), ProfileDefaults.Types.Select(t => t.Name).Order());
    }

    private static CameraProfile Parse(string json) => ProfileFile.Parse(Encoding.UTF8.GetBytes(json), "p.json");
}
