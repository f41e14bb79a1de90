using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

public sealed class CommandLineTests
{
    [Fact]
    public void HelpNamesEveryCommandAndGoesToStandardOutput()
    {
        CommandRun run = new SensorProfileCommand().Run("--help").Expect(ExitCodes.Answered);
        Assert.Equal("", run.Error);
        foreach (string name in CommandList.Names)
            Assert.Contains(name.Split(' ')[0], run.Output, StringComparison.Ordinal);
    }

    public static TheoryData<string> EveryCommand => [.. CommandList.Names];

    [Theory, MemberData(nameof(EveryCommand))]
    public void HelpOfEachCommandShowsAnExample(string name)
    {
        CommandRun run = new SensorProfileCommand().Run([.. name.Split(' '), "--help"]).Expect(ExitCodes.Answered);
        Assert.Contains("EXAMPLES:", run.Output, StringComparison.Ordinal);
        Assert.Contains("sensorprofile " + name, run.Output, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(EveryCommand))]
    public void HelpFitsFortyColumns(string name)
    {
        SensorProfileCommand narrow = new() { Environment = new Dictionary<string, string?> { ["COLUMNS"] = "40" } };
        CommandRun run = narrow.Run([.. name.Split(' '), "--help"]).Expect(ExitCodes.Answered);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 40));
    }

    [Fact]
    public void VersionIsOneLine() =>
        Assert.Equal(
            CommandLine.Version + "\n",
            new SensorProfileCommand().Run("--version").Expect(ExitCodes.Answered).Output
        );

    [Theory]
    [InlineData(
        "shema",
        "sensorprofile: There is no command 'shema'. Did you mean 'schema'? Try: sensorprofile --help\n"
    )]
    [InlineData("polish", "sensorprofile: There is no command 'polish'. Try: sensorprofile --help\n")]
    [InlineData("schema --bogus", "sensorprofile: The option --bogus is not known. Try: sensorprofile schema --help\n")]
    [InlineData(
        "schem",
        "sensorprofile: There is no command 'schem'. Did you mean 'schema'? Try: sensorprofile --help\n"
    )]
    [InlineData(
        "darks mtch",
        "sensorprofile: There is no command 'darks mtch'. Did you mean 'darks match'? Try: sensorprofile darks --help\n"
    )]
    [InlineData(
        "setpoint p.json",
        "sensorprofile: setpoint needs --exposure, the exposure of one light in seconds. Try: sensorprofile setpoint --help\n"
    )]
    [InlineData(
        "setpoint p.json --exposure 3,5",
        "sensorprofile: '3,5' is not a number. Write 3.5. Try: sensorprofile setpoint --help\n"
    )]
    [InlineData(
        "simulate c.json --out x --seed -3",
        "sensorprofile: '-3' is not a whole number. Try: sensorprofile simulate --help\n"
    )]
    [InlineData(
        "schema profile extra",
        "sensorprofile: schema knows profile, setup and the answers of demo, shots, survey, characterise, report, "
            + "setpoint, exposure, darks plan, darks match, darks check, darks predict, flats plan, drift, fleet, simulate; "
            + "not 'profile extra'. Try: sensorprofile schema --help\n"
    )]
    public void AWrongCommandLineGivesOneLineAndExitCode2(string arguments, string error)
    {
        CommandRun run = new SensorProfileCommand().Run(arguments.Split(' ')).Expect(ExitCodes.WrongCommandLine);
        Assert.Equal(error, run.Error);
        Assert.Equal("", run.Output);
    }

    [Theory]
    [InlineData(new[] { "setpoint", "p.json", "--ambient", "-8" }, new[] { "setpoint", "p.json", "--ambient=-8" })]
    [InlineData(new[] { "setpoint", "--ambient", "−8.5" }, new[] { "setpoint", "--ambient=-8.5" })]
    [InlineData(new[] { "setpoint", "--json", "-h" }, new[] { "setpoint", "--json", "-h" })]
    [InlineData(new[] { "a", "-1" }, new[] { "a", "-1" })]
    public void ANegativeNumberBelongsToTheOptionBeforeIt(string[] typed, string[] bound) =>
        Assert.Equal(bound, NegativeNumbers.Bind(typed));

    [Fact]
    public void AFullDiskBehindARedirectionIsExitCode4()
    {
        if (!File.Exists("/dev/full"))
            return; // Linux only
        CommandRun run = new SensorProfileCommand().Shell("$SP schema > /dev/full").Expect(ExitCodes.UnwritableOutput);
        Assert.StartsWith(
            "sensorprofile: standard output: the answer could not be written",
            run.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AReaderThatHasSeenEnoughIsNoError() =>
        Assert.Equal("{\n", new SensorProfileCommand().Shell("$SP schema | head -n 1").Expect(0).Output);

    [Fact]
    public void TheSchemaIsTheSameBytesUnderAGermanLocaleWithoutAHome()
    {
        SensorProfileCommand german = new()
        {
            Environment = new Dictionary<string, string?>
            {
                ["LANG"] = "de_DE.UTF-8",
                ["LC_ALL"] = "de_DE.UTF-8",
                ["HOME"] = null,
            },
        };
        Assert.Equal(new SensorProfileCommand().Run("schema").Expect(0).Output, german.Run("schema").Expect(0).Output);
    }
}
