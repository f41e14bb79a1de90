using SensorProfile.Cli.Tests.Running;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Cli.Tests.Windows;

/// <summary>
/// What Windows would refuse or confuse, as far as it can be seen from another system: names that are written, names
/// and tables that come from there.
/// </summary>
/// <remarks>
/// Rules of names: "Naming Files, Paths, and Namespaces" of the Windows documentation (from memory): no character of
/// &lt;&gt;:"|?*, no device's name, no point or blank at the end, no two names that differ in case alone; 260 characters
/// for a whole path where long paths are not allowed.
/// </remarks>
public sealed class WindowsNamesTests
{
    private const int LongestPath = 260,
        RoomForTheUsersFolder = 120;

    private static readonly string[] devices =
    [
        "CON",
        "PRN",
        "AUX",
        "NUL",
        .. Enumerable.Range(0, 10).SelectMany(n => new[] { $"COM{n}", $"LPT{n}" }),
    ];

    /// <summary>A camera whose name is a device and more, two settings, a read-out mode with a colon.</summary>
    private const string Night = """
        { "name": "NUL: a|b?*<c>\"d\" . ", "width": 80, "height": 60, "gain": 0.8, "readNoise": 1.6,
          "darkCurrent": { "rateAtReference": 0.2, "referenceTemperature": -10, "doublingTemperature": 6 },
          "shots": [
            { "kind": "bias", "exposure": 0.001, "temperature": -10, "count": 6 },
            { "kind": "dark", "exposure": 30, "temperature": -10, "count": 3 },
            { "kind": "dark", "exposure": 300, "temperature": -10, "count": 3 } ] }
        """;

    [Fact]
    public void EveryNameThatIsWrittenIsOneThatWindowsTakes()
    {
        using TemporaryFolder folder = new();
        SimulatedNight.Write(folder["night"], Night);
        folder
            .Command.Run("characterise", "night", "--out", "results", "--archive", "archive")
            .Expect(ExitCodes.CannotTell);
        folder.Command.Run("report", "results", "--out", "again").Expect(ExitCodes.CannotTell);
        string[] written =
        [
            .. Directory
                .EnumerateFileSystemEntries(folder.Path, "*", SearchOption.AllDirectories)
                .Select(file => Path.GetRelativePath(folder.Path, file)),
        ];
        Assert.True(written.Length > 40, "hardly a file was written");
        Assert.All(written.SelectMany(file => file.Split('/')).Distinct(), IsTaken);
        Assert.All(written, file => Assert.InRange(file.Length, 1, LongestPath - RoomForTheUsersFolder));
        Assert.Equal(written.Length, written.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    private static void IsTaken(string name)
    {
        Assert.DoesNotContain(name, c => c < ' ' || "<>:\"|?*\\".Contains(c, StringComparison.Ordinal));
        Assert.False(name.EndsWith('.') || name.EndsWith(' '), name);
        Assert.DoesNotContain(name.Split('.')[0], devices, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>Old programs end at 260 characters; frames, table and results may lie deeper.</summary>
    [Fact]
    public void PathsBeyondTheLimitAreReadAndWritten()
    {
        using TemporaryFolder folder = new();
        string deep = string.Join('/', Enumerable.Repeat("a folder whose name is as long as people make them", 6));
        SimulatedNight.Write(folder[$"{deep}/night"], Night);
        folder.Command.Run("survey", $"{deep}/night", "--table", $"{deep}/table.csv").Expect(ExitCodes.Answered);
        folder
            .Command.Run("characterise", $"{deep}/night", "--table", $"{deep}/table.csv", "--out", $"{deep}/results")
            .Expect(ExitCodes.CannotTell);
        string profile = folder[$"{deep}/results/profile.json"];
        Assert.True(profile.Length > LongestPath);
        Assert.True(File.Exists(profile));
        Assert.StartsWith(
            "The profile has no read noise in electrons",
            folder
                .Command.Run("setpoint", $"{deep}/results", "--exposure", "300")
                .Expect(ExitCodes.CannotTell)
                .FirstLine,
            StringComparison.Ordinal
        );
    }

    /// <summary>Backslashes, lines that end in CR and LF, a mark of byte order, decimal commas: a spreadsheet there.</summary>
    [Fact]
    public void ACaptureTableFromThereIsRead()
    {
        using TemporaryFolder folder = new();
        SimulatedNight.Write(folder["night/darks"], SimulatedNight.DarksOnly);
        string[] frames =
        [
            .. Directory.GetFiles(folder["night/darks"], "*.fits").Select(f => Path.GetFileName(f)).Order(),
        ];
        File.WriteAllText(
            folder["table.csv"],
            "\uFEFFfile;kind;temperature_c\r\n" + string.Concat(frames.Select(name => $"darks\\{name};dark;-12,5\r\n"))
        );
        Inventory inventory = FrameInventory.Read(
            [folder["night"]],
            new InventoryOptions { Table = CaptureTable.Read(folder["table.csv"]) }
        );
        Assert.Equal(frames.Length, inventory.Frames.Count);
        Assert.All(inventory.Frames, frame => Assert.Equal(-12.5, frame.TemperatureCelsius));
    }

    [Theory]
    [InlineData("\uFEFFdate,temperature\r\n2031-07-14,19.5\r\n2031-12-20,-4\r\n")]
    [InlineData("2031-07-14;19,5\r\n2031-12-20;-4\r\n\r\n")]
    public void ATableOfNightsFromThereIsRead(string table)
    {
        using TemporaryFolder folder = new();
        File.WriteAllText(folder["nights.csv"], table);
        Assert.Equal(
            [19.5, -4],
            Commands.Options.TemperatureTable.Read(folder["nights.csv"]).Select(night => night.Celsius)
        );
    }
}
