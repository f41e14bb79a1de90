using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

public sealed class SurveyTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void AFullNightIsReadyAndNothingOfItIsTouched()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.Full);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(folder["night"]);
        CommandRun run = folder.Command.Run("survey", "night", "--explain").Expect(ExitCodes.Answered);
        Assert.Equal("Ready to characterise: these frames serve every measurement.", run.FirstLine);
        Assert.Contains(
            "\n  dark       3     300 s    0.0 °C  gain 100, offset 30, 1x1\n",
            run.Output,
            StringComparison.Ordinal
        );
        Assert.Equal(before, TemporaryFolder.Digests(folder["night"]));
    }

    [Fact]
    public void FramesWithoutAKindHearTheCureFirst()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        foreach (string file in Directory.GetFiles(folder["night"], "*.fits"))
        {
            byte[] bytes = File.ReadAllBytes(file);
            int card = System.Text.Encoding.ASCII.GetString(bytes).IndexOf("IMAGETYP", StringComparison.Ordinal);
            bytes[card] = (byte)'X';
            File.WriteAllBytes(file, bytes);
        }
        CommandRun run = folder.Command.Run("survey", "night").Expect(ExitCodes.Answered);
        Assert.StartsWith(
            "Say what these frames are: 6 of 6 frames do not say whether they are bias, dark or flat. Fill in the column 'kind'",
            run.FirstLine,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "6 frames in 2 sets: none can be used until its kind is known",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TheJsonDocumentHasTheNamesOfTheContract()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        JsonElement json = folder.Command.Run("survey", "night", "--json").Expect(ExitCodes.Answered).Json;
        Assert.Equal("survey", json.GetProperty("command").GetString());
        Assert.Equal("lacking", json.GetProperty("verdict").GetString());
        JsonElement set = json.GetProperty("sets")[0];
        Assert.Equal("dark", set.GetProperty("kind").GetString());
        Assert.Equal(30, set.GetProperty("exposure").GetDouble());
        Assert.Equal(-10, set.GetProperty("temperature").GetDouble());
        Assert.Equal(3, set.GetProperty("frames").GetInt32());
        Assert.Equal(100, set.GetProperty("settings").GetProperty("gain").GetDouble());
        Assert.Contains(json.GetProperty("lacks").EnumerateArray(), lack =>
            lack.GetProperty("measurement").GetString() == "read-noise"
        );
        Assert.Equal(JsonValueKind.Array, json.GetProperty("findings").ValueKind);
    }

    [Fact]
    public void TextAndJsonAreTheSameBytesUnderAGermanLocale()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        SensorProfileCommand german = folder.Command with
        {
            Environment = new Dictionary<string, string?>
            {
                ["LANG"] = "de_DE.UTF-8",
                ["LC_ALL"] = "de_DE.UTF-8",
                ["HOME"] = null,
            },
        };
        foreach (string[] arguments in new string[][] { ["survey", "night"], ["survey", "night", "--json"] })
            Assert.Equal(folder.Command.Run(arguments).Output, german.Run(arguments).Output);
    }

    [Fact]
    public void ATableIsWrittenOnceThenAppliedAndNeverChanged()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        folder.Command.Run("survey", "night", "--table", "Tabelle für Herbst.csv").Expect(ExitCodes.Answered);
        string table = File.ReadAllText(folder["Tabelle für Herbst.csv"]);
        Assert.StartsWith(
            "file,kind,exposure_s,temperature_c,gain,offset,iso,binning,set,use\r\n",
            table,
            StringComparison.Ordinal
        );

        string corrected = table.Replace(
            "dark_-10C_30s_001.fits,dark",
            "dark_-10C_30s_001.fits,bias",
            StringComparison.Ordinal
        );
        File.WriteAllText(folder["Tabelle für Herbst.csv"], corrected);
        JsonElement json = folder
            .Command.Run("survey", "night", "--table", "Tabelle für Herbst.csv", "--json")
            .Expect(ExitCodes.Answered)
            .Json;
        Assert.Contains(json.GetProperty("sets").EnumerateArray(), set =>
            set.GetProperty("kind").GetString() == "bias"
        );
        Assert.Equal(corrected, File.ReadAllText(folder["Tabelle für Herbst.csv"]));
    }

    [Fact]
    public void ATableInsideTheFramesIsRefused()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        CommandRun run = folder
            .Command.Run("survey", "night", "--table", "night/table.csv")
            .Expect(ExitCodes.WrongCommandLine);
        Assert.StartsWith(
            "sensorprofile: --table night/table.csv lies in night, which is read and never written to.",
            run.Error,
            StringComparison.Ordinal
        );
        Assert.False(File.Exists(folder["night/table.csv"]));
    }

    [Fact]
    public void ADamagedTableIsExitCode3WithItsLine()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        File.WriteAllText(folder["table.csv"], "file,kind,exposure_s\ndark_-10C_30s_001.fits,dark,long\n");
        CommandRun run = folder
            .Command.Run("survey", "night", "--table", "table.csv")
            .Expect(ExitCodes.UnreadableInput);
        Assert.StartsWith("sensorprofile: table.csv, line 2, column exposure_s: ", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatDoesNotExistIsExitCode3()
    {
        CommandRun run = folder.Command.Run("survey", "nowhere").Expect(ExitCodes.UnreadableInput);
        Assert.EndsWith(
            "sensorprofile: nowhere: There is no such file or folder; check the path.\n",
            run.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void OneBadFileIsNamedAndTheRestIsRead()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        File.WriteAllText(folder["night/broken ä.fits"], "this is no FITS file");
        CommandRun run = folder.Command.Run("survey", "night").Expect(ExitCodes.Answered);
        Assert.Contains("left out: broken ä.fits: ", run.Error, StringComparison.Ordinal);
        Assert.Contains(
            "6 frames in 2 sets can be used, 1 file left out; passed over: ",
            run.Output,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhatCannotBeAFrameIsCountedByKind()
    {
        Directory.CreateDirectory(folder["night"]);
        for (int i = 0; i < 12; i++)
            File.WriteAllBytes(folder[$"night/{i}.jpg"], [0xFF, 0xD8, 0xFF, 0xE1]);
        File.WriteAllText(folder["night/notes.txt"], "clear, 3 °C");
        CommandRun run = folder.Command.Run("survey", "night").Expect(ExitCodes.UnreadableInput);
        Assert.Contains(
            "no frame is there (FITS: .fits, .fit, .fts, also .gz or .fz; DNG and other raw files; TIFF mosaics); "
                + "passed over: 12 JPEG pictures and 1 text file.",
            run.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void FortyColumnsAreEnough()
    {
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        SensorProfileCommand narrow = folder.Command with
        {
            Environment = new Dictionary<string, string?> { ["COLUMNS"] = "40" },
        };
        Assert.All(narrow.Run("survey", "night").Expect(0).Output.Split('\n'), line =>
            Assert.InRange(line.Length, 0, 40)
        );
    }

    [Fact]
    public void ATerminalGetsColoursUnlessNoColorIsSet()
    {
        if (!File.Exists("/usr/bin/script"))
            return; // util-linux's script gives the command a terminal
        SimulatedNight.Write(folder["night"], SimulatedNight.DarksOnly);
        Dictionary<string, string?> terminal = new() { ["TERM"] = "xterm-256color" };
        const string Line = "script -qec \"stty cols 100; $SP survey night\" /dev/null < /dev/null";
        string coloured = (folder.Command with { Environment = terminal }).Shell(Line).Output;
        string plain = (
            folder.Command with
            {
                Environment = new Dictionary<string, string?>(terminal) { ["NO_COLOR"] = "1" },
            }
        )
            .Shell(Line)
            .Output;
        Assert.Contains("\u001b[1mShoot more", coloured, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b[38", plain, StringComparison.Ordinal);
        Assert.Contains("Shoot more", plain, StringComparison.Ordinal);
    }
}
