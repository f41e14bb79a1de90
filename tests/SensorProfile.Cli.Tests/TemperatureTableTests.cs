using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>setpoint --nights: a table of the air's temperatures.</summary>
public sealed class TemperatureTableTests : IDisposable
{
    private static readonly string[] question =
    [
        "setpoint",
        "profile.json",
        "--exposure",
        "300",
        "--sky",
        "2",
        "--max-delta",
        "20",
        "--json",
        "--nights",
        "nights.csv",
    ];

    private readonly TemporaryFolder folder = new();

    public TemperatureTableTests() => TarnProfile.Write(folder["profile.json"]);

    public void Dispose() => folder.Dispose();

    [Fact] // 3 of the 20 °C stay in reserve: the cooler holds −25, −9 (in whole degrees) and 5 °C on these nights
    public void EveryLineIsANight()
    {
        JsonElement json = Ask("date,celsius\n2031-01-10,-8\n2031-04-10,7.5\n\n2031-07-14,22\n")
            .Expect(ExitCodes.Answered)
            .Json;
        Assert.Equal(
            [("2031-01-10", -8.0), ("2031-04-10", 7.5), ("2031-07-14", 22.0)],
            json.GetProperty("ambient")
                .EnumerateArray()
                .Select(a => (a.GetProperty("label").GetString()!, a.GetProperty("ambient").GetDouble()))
        );
        JsonElement[] rows = [.. json.GetProperty("nights").EnumerateArray()];
        Assert.All(rows, row =>
            Assert.Equal(
                new[] { -25, -9, 5 }.Count(held => held <= row.GetProperty("sensor").GetDouble()),
                row.GetProperty("nights").GetInt32()
            )
        );
        Assert.Equal(3, rows[^1].GetProperty("nights").GetInt32());
    }

    [Theory]
    [InlineData("2031-01-10;-8,0\n2031-04-10;7,5\n2031-07-14;22\n")]
    [InlineData("\"2031-01-10\"\t−8\n2031-04-10\t7.5\n2031-07-14\t22")]
    public void TablesOfOtherProgramsSayTheSame(string table) =>
        Assert.Equal(
            Ask("date,celsius\n2031-01-10,-8\n2031-04-10,7.5\n2031-07-14,22\n").Output,
            Ask(table).Expect(ExitCodes.Answered).Output
        );

    [Theory]
    [InlineData(
        "2031-01-10,-8\n2031-04-10,cold\n",
        ExitCodes.UnreadableInput,
        "nights.csv, line 2: expected a temperature in °C at the end of the line, found 'cold'."
    )]
    [InlineData("date,celsius\n", ExitCodes.UnreadableInput, "nights.csv: holds no temperatures.")]
    [InlineData(
        "2031-01-10,800\n",
        ExitCodes.WrongCommandLine,
        "An ambient temperature of 800 °C is not between −90 °C and 60 °C."
    )]
    public void ABadTableNamesFileLineAndWhatIsWrong(string table, int exitCode, string message)
    {
        CommandRun run = Ask(table).Expect(exitCode);
        Assert.Equal("", run.Output);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ATableThatIsNotThereIsNamed() =>
        Assert.Contains(
            "nights.csv: there is no table of temperatures here.",
            folder.Command.Run(question).Expect(ExitCodes.UnreadableInput).Error,
            StringComparison.Ordinal
        );

    private CommandRun Ask(string table)
    {
        File.WriteAllText(folder["nights.csv"], table);
        return folder.Command.Run(question);
    }
}
