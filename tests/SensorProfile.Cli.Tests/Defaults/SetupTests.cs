using System.Text.Json;
using SensorProfile.Cli.Defaults;
using SensorProfile.Cli.Terminal;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Defaults;

/// <summary>A setup answers what was not typed; what was typed wins; every answer says what it took.</summary>
public sealed class SetupTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private string Setup => Path.Combine(folder.Path, "mine.json");
    private string Profile => Path.Combine(folder.Path, "tarn", "profile.json");

    public SetupTests()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Profile)!);
        TarnProfile.Write(Profile);
        File.WriteAllText(
            Setup,
            """
            {
              "telescope": { "focalRatio": 5, "efficiency": 0.4 },
              "camera": { "profile": "tarn", "pixelMicrometres": 3.76 },
              "sky": { "brightness": 20.5 },
              "filters": [
                { "name": "L", "bandwidthNanometres": 300 },
                { "name": "Ha", "bandwidthNanometres": 7, "centreNanometres": 656 }
              ],
              "stack": { "exposure": 300, "lights": 40, "ditherPositions": 20, "rejection": "sigma-clip" },
              "cooling": { "reach": 35 },
              "acceptedLoss": 4
            }
            """
        );
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(
        "setpoint",
        "--exposure=300 --sky-brightness=20.5 --focal-ratio=5 --pixel-size=3.76 --efficiency=0.4 --bandwidth=300 --loss=4"
    )]
    [InlineData(
        "setpoint --filter ha --sky-brightness 19",
        "--exposure=300 --focal-ratio=5 --pixel-size=3.76 --efficiency=0.4 --bandwidth=7 --wavelength=656 --loss=4"
    )]
    [InlineData("setpoint --exposure 60 --sky 2 --ambient=-3", "--loss=4 --max-delta=35")]
    [InlineData("setpoint --sky 2 --ambient 5 --uncooled --loss 1", "--exposure=300")]
    // nine lights have nine positions at most
    [InlineData("darks match --sky=2 --lights 9", "--exposure=300 --dithers=9 --rejection=sigma-clip --loss=4")]
    [InlineData("darks match --lights lights --darks darks", "--dithers=20 --rejection=sigma-clip --loss=4")]
    [InlineData("darks plan --three-skies --rejects", "--exposure=300 --lights=40 --dithers=20 --loss=4")]
    [InlineData("flats plan --sky=2 --lights 9", "--exposure=300 --dithers=9 --rejection=sigma-clip --loss=4")]
    public void WhatWasNotTypedIsAdded(string line, string added)
    {
        string[] typed = line.Split(' ');
        (string[] completed, RememberedOptions remembered) = Complete([.. typed, "--setup", Setup]);
        int words = typed[0] is "darks" or "flats" ? 2 : 1;
        string[] expected = [.. typed[..words], Path.Combine(folder.Path, "tarn"), .. typed[words..], "--setup", Setup];
        Assert.Equal([.. expected, .. added.Split(' ')], completed);
        Assert.Equal(Setup, remembered.File);
    }

    [Fact] // it was passed over without a word, and the sky assumed
    public void HalfASkyIsMentioned()
    {
        File.WriteAllText(Setup, """{ "sky": { "brightness": 20.5 }, "telescope": { "focalRatio": 5 } }""");
        (string[] completed, RememberedOptions remembered) = Complete(["setpoint", Profile, "--setup", Setup]);
        Assert.Equal(["setpoint", Profile, "--setup", Setup], completed);
        Assert.Equal(
            "sky brightness 20.5 mag/arcsec², not used: it needs a focal ratio and a pixel size",
            Assert.Single(remembered.Options).Value
        );
    }

    [Theory]
    [InlineData("darks match --lights 40")]
    [InlineData("darks plan --sky 2")]
    [InlineData("flats plan --sky 2")]
    public void TheScaleOfSmoothResidualsIsPartOfTheStack(string line)
    {
        File.WriteAllText(Setup, """{ "camera": { "profile": "tarn" }, "stack": { "smooth": 64 } }""");
        (string[] completed, _) = Complete([.. line.Split(' '), "--setup", Setup]);
        Assert.Equal("--smooth=64", completed[^1]);
        (completed, _) = Complete([.. line.Split(' '), "--smooth", "100", "--setup", Setup]);
        Assert.DoesNotContain("--smooth=64", completed);
    }

    [Fact]
    public void AProfileThatWasTypedIsUsed()
    {
        (string[] completed, _) = Complete(["setpoint", Profile, "--sky", "2", "--setup", Setup]);
        Assert.Equal(["setpoint", Profile, "--sky", "2", "--setup", Setup, "--exposure=300", "--loss=4"], completed);
    }

    [Theory]
    [InlineData("setpoint --no-setup")]
    [InlineData("setpoint --help")]
    [InlineData("survey frames")]
    [InlineData("nonsense")]
    public void NothingIsAddedWhereNoSetupBelongs(string line)
    {
        string[] typed = [.. line.Split(' '), "--setup", Setup];
        (string[] completed, RememberedOptions remembered) = Complete(typed);
        Assert.Equal(typed, completed);
        Assert.Null(remembered.File);
    }

    [Fact]
    public void ASetupBesideTheProfileIsFound()
    {
        File.WriteAllText(Path.Combine(folder.Path, "tarn", "setup.json"), """{ "stack": { "exposure": 120 } }""");
        (string[] completed, _) = Complete(["setpoint", Profile]);
        Assert.Equal(["setpoint", Profile, "--exposure=120"], completed);
    }

    [Theory]
    [InlineData(
        "--setup nowhere.json",
        "nowhere.json: there is no setup here; write one with: sensorprofile setup --out nowhere.json"
    )]
    [InlineData("--setup mine.json --filter OIII", "mine.json has no filter called OIII; it has L, Ha.")]
    public void WhatIsNotThereIsNamed(string options, string message)
    {
        string[] typed = ["setpoint", .. options.Replace("mine.json", Setup, StringComparison.Ordinal).Split(' ')];
        CommandFailure failure = Assert.Throws<CommandFailure>(() => Complete(typed));
        Assert.Equal(message.Replace("mine.json", Setup, StringComparison.Ordinal), failure.Message);
    }

    /// <summary>The same question by setup and by options: the same numbers, and the sources tell them apart.</summary>
    [Fact]
    public void ASetupGivesTheAnswerOfItsOptions()
    {
        SensorProfileCommand command = new()
        {
            Environment = new Dictionary<string, string?> { ["XDG_CONFIG_HOME"] = folder.Path },
        };
        command
            .Run(
                "setup",
                "--profile",
                Profile,
                "--exposure",
                "300",
                "--sky",
                "2",
                "--lights",
                "40",
                "--dithers",
                "20",
                "--rejection",
                "sigma-clip"
            )
            .Expect(0);
        JsonElement byOptions = command
            .Run(
                "darks",
                "match",
                Profile,
                "--exposure",
                "300",
                "--sky",
                "2",
                "--lights",
                "40",
                "--dithers",
                "20",
                "--rejects",
                "--json",
                "--no-setup"
            )
            .Expect(0)
            .Json;
        CommandRun text = command.Run("darks", "match").Expect(0);
        JsonElement bySetup = command.Run("darks", "match", "--json").Expect(0).Json;
        Assert.Equal(byOptions.GetProperty("quantities").ToString(), bySetup.GetProperty("quantities").ToString());
        Assert.Equal(byOptions.GetProperty("sentence").ToString(), text.FirstLine);
        string file = Path.Combine(folder.Path, "sensorprofile", "setup.json");
        Assert.Contains(
            $"From your setup ({file}): profile {Profile}, 300 s, 40 lights, 20 dither positions, rejection sigma-clip, sky 2 e⁻/px/s.",
            text.Output
        );
        Assert.Equal("setup", Source(bySetup, "ditherPositions"));
        Assert.Equal("setup", Source(bySetup, "sky"));
        Assert.Equal("option", Source(byOptions, "sky"));
    }

    [Fact]
    public void QuestionsAreAskedAndWhatIsThereIsKept()
    {
        string file = Path.Combine(folder.Path, "asked.json");
        SensorProfileCommand command = new() { WorkingDirectory = folder.Path };
        command
            .Shell(
                $"printf 'tarn\\n5\\n3.76\\n20,5\\n\\n300\\n4x\\n40\\n20\\nsigma-clip\\n35\\n\\n' | $SP setup --ask --out {file}"
            )
            .Expect(0);
        JsonElement first = JsonDocument.Parse(File.ReadAllText(file)).RootElement;
        Assert.Equal("tarn", first.GetProperty("camera").GetProperty("profile").GetString());
        Assert.Equal(20.5, first.GetProperty("sky").GetProperty("brightness").GetDouble());
        Assert.Equal(40, first.GetProperty("stack").GetProperty("lights").GetInt32());
        // one answer changed, the rest kept; then the input ends
        command.Shell($"printf '\\n4\\n' | $SP setup --ask --out {file}").Expect(0);
        JsonElement second = JsonDocument.Parse(File.ReadAllText(file)).RootElement;
        Assert.Equal(4, second.GetProperty("telescope").GetProperty("focalRatio").GetDouble());
        Assert.Equal(first.GetProperty("stack").ToString(), second.GetProperty("stack").ToString());
        Assert.Equal(35, second.GetProperty("cooling").GetProperty("reach").GetDouble());
    }

    private static string? Source(JsonElement answer, string name) =>
        answer
            .GetProperty("assumptions")
            .EnumerateArray()
            .Single(a => a.GetProperty("name").GetString() == name)
            .GetProperty("source")
            .GetString();

    private static (string[] Arguments, RememberedOptions Remembered) Complete(string[] arguments) =>
        SetupDefaults.Complete(
            arguments,
            new Session(
                new ResultStream(() => Stream.Null, false),
                new StandardErrorStream(TextWriter.Null, false, TimeProvider.System),
                TimeProvider.System,
                default
            )
        );
}
