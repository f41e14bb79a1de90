using System.Text.Json;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Cli.Tests;

/// <summary>darks predict on a characterised night: good questions, wrong ones, and damaged maps.</summary>
public sealed class DarksPredictTests(CharacterisedNight night) : IClassFixture<CharacterisedNight>, IDisposable
{
    private readonly TemporaryFolder own = new();

    private string Profile => night.Folder["results"];

    public void Dispose() => own.Dispose();

    [Fact]
    public void AComputedDarkIsAMasterDarkWithItsUncertaintyBehindIt()
    {
        CommandRun run = own
            .Command.Run(
                "darks",
                "predict",
                Profile,
                "--temperature",
                "-5",
                "--exposure",
                "200",
                "--out",
                "dark -5 °C.fits"
            )
            .Expect(ExitCodes.Answered);
        Assert.StartsWith(
            "Use the computed master dark for lights of 200 s at −5 °C",
            run.FirstLine,
            StringComparison.Ordinal
        );
        using FitsFile file = FitsFile.Open(own["dark -5 °C.fits"]);
        Assert.Equal(2, file.Hdus.Count);
        Assert.Equal((160, 120, -32), (file.Hdus[0].Width, file.Hdus[0].Height, file.Hdus[0].Bitpix));
        Assert.Equal("UNCERTAINTY", file.Hdus[1].Name);
        FitsHeader header = file.Hdus[0].Header;
        Assert.Equal((200, -5), (header.Number("EXPTIME"), header.Number("CCD-TEMP")));
        Assert.Equal(
            ("adu", "Master Dark", "Tarn-9M"),
            (header.Text("BUNIT"), header.Text("IMAGETYP"), header.Text("INSTRUME"))
        );
        Assert.True(header.Number("DKCOVTYP") is > 0.9 and < 1 && header.Text("INDIGEST")!.Length > 0);
        // 0.2 e-/px/s at −10 °C doubling every 6 °C: at −5 °C over 200 s 71.3 e-, at 0.8 e-/ADU 89.1 ADU above the bias
        // of 500.
        float[] pixels = new float[160 * 120],
            doubts = new float[160 * 120];
        file.Hdus[0].ReadRows(0, pixels);
        file.Hdus[1].ReadRows(0, doubts);
        Assert.Equal(500 + 0.2 * Math.Pow(2, 5 / 6.0) * 200 / 0.8, pixels.Average(), 2.0);
        Assert.InRange(doubts.Average(), 0.5, 5);
    }

    /// <summary>
    /// The darks that it was computed from share its noise and tell nothing. Those of another night of the same sensor
    /// meet it as near as it claims: good enough for one light, not for forty, whose darks may cost 5 %.
    /// </summary>
    [Fact]
    public void AComputedDarkIsAsNearToNewDarksAsItClaims()
    {
        using JsonDocument truth = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(night.Folder["night"], "truth.json"))
        );
        string serial = truth.RootElement.GetProperty("serial").GetRawText();
        SimulatedNight.Write(
            own["another night"],
            $"{{ \"serial\": {serial}, {SimulatedNight.Full.TrimStart()[1..]}",
            seed: 2
        );
        double claimed = Computed("--json")
            .Expect(ExitCodes.Answered)
            .Json.GetProperty("quantities")
            .GetProperty("uncertaintyTypical")
            .GetProperty("value")
            .GetDouble();
        JsonElement Check(string against, int lights, int exitCode) =>
            own
                .Command.Run(
                    "darks",
                    "check",
                    "d.fits",
                    "--against",
                    against,
                    "--profile",
                    Path.Combine(Profile, "profile.json"),
                    "--lights",
                    $"{lights}",
                    "--json"
                )
                .Expect(exitCode)
                .Json;
        Assert.Equal(
            "cannot-tell",
            Check(night.Folder["night"], 1, ExitCodes.CannotTell).GetProperty("verdict").GetString()
        );
        JsonElement one = Check("another night", 1, ExitCodes.Answered);
        Assert.Equal("keep", one.GetProperty("verdict").GetString());
        double residual = one.GetProperty("masters")[0].GetProperty("residual").GetProperty("value").GetDouble();
        Assert.InRange(residual / claimed, 0.7, 1);
        Assert.Equal("retake", Check("another night", 40, ExitCodes.Answered).GetProperty("verdict").GetString());
    }

    [Fact]
    public void ItsJsonNamesTheFileTheNumbersAndTheTrials()
    {
        JsonElement json = own
            .Command.Run(
                "darks",
                "predict",
                Profile,
                "--temperature",
                "-5",
                "--exposure",
                "200",
                "--out",
                "d.fits",
                "--json"
            )
            .Expect(ExitCodes.Answered)
            .Json;
        Assert.Equal(
            ("darks predict", "computed", "d.fits", "temperature"),
            (
                json.GetProperty("command").GetString(),
                json.GetProperty("verdict").GetString(),
                json.GetProperty("file").GetString(),
                json.GetProperty("proof").GetString()
            )
        );
        Assert.InRange(
            json.GetProperty("quantities").GetProperty("coverageTypical").GetProperty("value").GetDouble(),
            90,
            99
        );
        Assert.True(json.GetProperty("trials").GetProperty("sets").GetArrayLength() > 9);
        Assert.Equal("Master Dark", FitsFile.Open(own["d.fits"]).Hdus[0].Header.Text("IMAGETYP"));
    }

    [Fact]
    public void FreshDarksThatWereHeldBackAreCompared()
    {
        CommandRun agrees = Computed("--against", night.Folder["night"], "--explain").Expect(ExitCodes.Answered);
        Assert.Contains("fresh-darks-agree", agrees.Output, StringComparison.Ordinal);
        // Another sensor of the same kind, its hot pixels elsewhere: the master must not be written.
        SimulatedNight.Write(
            own["other"],
            SimulatedNight.Full.Replace(
                "\"thermometer\"",
                "\"hotPixels\": { \"share\": 0.3, \"distribution\": { \"minimum\": 1, \"maximum\": 5 } }, "
                    + "\"thermometer\"",
                StringComparison.Ordinal
            ),
            seed: 9
        );
        CommandRun differs = own
            .Command.Run(
                "darks",
                "predict",
                Profile,
                "--temperature",
                "0",
                "--exposure",
                "300",
                "--out",
                "e.fits",
                "--against",
                "other"
            )
            .Expect(ExitCodes.CannotTell);
        Assert.StartsWith("Take real darks: ", differs.FirstLine, StringComparison.Ordinal);
        Assert.False(File.Exists(own["e.fits"]));
        CommandRun none = own
            .Command.Run(
                "darks",
                "predict",
                Profile,
                "--temperature",
                "5",
                "--exposure",
                "300",
                "--out",
                "e.fits",
                "--against",
                "other",
                "--explain"
            )
            .Expect(ExitCodes.CannotTell);
        Assert.Contains("fresh-darks-missing", none.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--temperature -5 --exposure 0 --out d.fits", "above 0 s")]
    [InlineData("--temperature -5 --exposure -20 --out d.fits", "above 0 s")]
    [InlineData("--temperature -5 --exposure 2,5 --out d.fits", "Write 2.5")]
    [InlineData("--temperature -5 --exposure 20", "needs --out")]
    [InlineData("--temperature -5 --out d.fits", "needs --exposure")]
    [InlineData("--exposure 20 --out d.fits", "needs --temperature")]
    public void AWrongQuestionIsExitCode2(string arguments, string said)
    {
        CommandRun run = own
            .Command.Run(["darks", "predict", Profile, .. arguments.Split(' ')])
            .Expect(ExitCodes.WrongCommandLine);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(own.Path));
    }

    [Theory]
    [InlineData("-25", "60", "temperature-outside-profile")]
    [InlineData("21", "60", "temperature-outside-profile")]
    [InlineData("-5", "700", "exposure-outside-profile")]
    public void FarOutsideTheDarksIsRefusedWithExitCode1(string celsius, string seconds, string code)
    {
        CommandRun run = own
            .Command.Run(
                "darks",
                "predict",
                Profile,
                "--temperature",
                celsius,
                "--exposure",
                seconds,
                "--out",
                "d.fits"
            )
            .Expect(ExitCodes.CannotTell);
        Assert.Contains(code, run.Output, StringComparison.Ordinal);
        Assert.False(File.Exists(own["d.fits"]));
    }

    [Fact]
    public void AnExposureSomewhatBeyondTheDarksIsAnsweredWithAWarning() =>
        Assert.Contains(
            "exposure-beyond-darks",
            own.Command.Run(
                    "darks",
                    "predict",
                    Profile,
                    "--temperature",
                    "-5",
                    "--exposure",
                    "400",
                    "--out",
                    "d.fits",
                    "--explain"
                )
                .Expect(ExitCodes.Answered)
                .Output,
            StringComparison.Ordinal
        );

    [Fact]
    public void MissingForeignAndDamagedMapsAreNamed()
    {
        string[] question = ["darks", "predict", "copy", "--temperature", "-5", "--exposure", "60", "--out", "d.fits"];
        Copy();
        File.Delete(own["copy/maps/pedestal.fits"]);
        Assert.Contains(
            "pedestal.fits",
            own.Command.Run(question).Expect(ExitCodes.CannotTell).FirstLine,
            StringComparison.Ordinal
        );
        Copy();
        byte[] bytes = File.ReadAllBytes(own["copy/maps/dark-rate.fits"]);
        bytes[20_000] ^= 0x40;
        File.WriteAllBytes(own["copy/maps/dark-rate.fits"], bytes);
        Assert.Contains(
            "dark-rate.fits is damaged",
            own.Command.Run(question).Expect(ExitCodes.UnreadableInput).Error,
            StringComparison.Ordinal
        );
        File.WriteAllBytes(own["copy/maps/dark-rate.fits"], bytes.AsSpan(0, 9000).ToArray());
        Assert.Contains(
            "dark-rate.fits",
            own.Command.Run(question).Expect(ExitCodes.UnreadableInput).Error,
            StringComparison.Ordinal
        );
        Copy();
        string profile = File.ReadAllText(own["copy/profile.json"]),
            digest =
                JsonDocument.Parse(profile).RootElement.GetProperty("frames").GetProperty("inputDigest").GetString()!;
        File.WriteAllText(
            own["copy/profile.json"],
            profile.Replace(digest, digest.Replace(digest[0], digest[0] == 'a' ? 'b' : 'a'), StringComparison.Ordinal)
        );
        Assert.Contains(
            "maps-of-another-profile",
            own.Command.Run(question).Expect(ExitCodes.CannotTell).Output,
            StringComparison.Ordinal
        );
        Assert.False(File.Exists(own["d.fits"]));
    }

    [Fact]
    public void OfSeveralModesTheOneThatIsNamedIsComputedFromItsOwnMaps()
    {
        Copy();
        CameraProfile one = ProfileFile.Read(own["copy/profile.json"]);
        ModeProfile mode = one.Modes[0];
        CameraProfile two = one with
        {
            Modes =
            [
                mode with
                {
                    Settings = mode.Settings with { Gain = 0 },
                },
                mode with
                {
                    Settings = mode.Settings with { Gain = 100 },
                },
            ],
        };
        Directory.CreateDirectory(own["two"]);
        ProfileFile.Write(own["two/profile.json"], two);
        foreach (string place in ModeLabel.Folders(two.Modes))
        {
            Directory.CreateDirectory(own[$"two/maps/{place}"]);
            foreach (string map in Directory.EnumerateFiles(own["copy/maps"]))
                File.Copy(map, own[$"two/maps/{place}/{Path.GetFileName(map)}"]);
        }
        File.Delete(own[$"two/maps/{ModeLabel.Folders(two.Modes)[0]}/pedestal.fits"]);
        string[] question = ["darks", "predict", "two", "--temperature", "-5", "--exposure", "200", "--out", "d.fits"];
        Assert.Contains(
            "say which gain you mean",
            own.Command.Run(question).Expect(ExitCodes.WrongCommandLine).Error,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "it was measured at",
            own.Command.Run([.. question, "--gain", "55"]).Expect(ExitCodes.CannotTell).FirstLine,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "pedestal.fits",
            own.Command.Run([.. question, "--gain", "0"]).Expect(ExitCodes.CannotTell).FirstLine,
            StringComparison.Ordinal
        );
        own.Command.Run([.. question, "--gain", "100"]).Expect(ExitCodes.Answered);
        own.Command.Run("darks", "predict", "copy", "--temperature", "-5", "--exposure", "200", "--out", "e.fits")
            .Expect(ExitCodes.Answered);
        float[] named = new float[160 * 120],
            alone = new float[160 * 120];
        FitsFile.Open(own["d.fits"]).Hdus[0].ReadRows(0, named);
        FitsFile.Open(own["e.fits"]).Hdus[0].ReadRows(0, alone);
        Assert.Equal(alone, named);
    }

    [Fact] // no bias frames: the refusal names them
    public void WithoutBiasFramesTheFramesToTakeAreNamed()
    {
        foreach (
            string frame in Directory
                .EnumerateFiles(night.Folder["night"], "*.fits")
                .Where(f => !Path.GetFileName(f).StartsWith("bias", StringComparison.Ordinal))
        )
        {
            Directory.CreateDirectory(own["nobias"]);
            File.Copy(frame, Path.Combine(own["nobias"], Path.GetFileName(frame)));
        }
        own.Command.Run("characterise", "nobias", "--out", "without");
        CommandRun run = own
            .Command.Run("darks", "predict", "without", "--temperature", "-5", "--exposure", "60", "--out", "d.fits")
            .Expect(ExitCodes.CannotTell);
        Assert.Contains("take 16 bias frames", run.FirstLine, StringComparison.Ordinal);
    }

    [Fact]
    public void AQuickProfileSaysWhatToRun()
    {
        own.Command.Run("characterise", night.Folder["night"], "--out", "quick", "--quick").Expect(ExitCodes.Answered);
        CommandRun run = own
            .Command.Run("darks", "predict", "quick", "--temperature", "-5", "--exposure", "60", "--out", "d.fits")
            .Expect(ExitCodes.CannotTell);
        Assert.Contains("laws of single pixels included", run.FirstLine, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatExistsIsKeptUnlessOverwriteIsSaidAndNothingThatIsReadIsEverWrittenOver()
    {
        string[] question = ["darks", "predict", Profile, "--temperature", "-5", "--exposure", "60", "--out", "d.fits"];
        File.WriteAllText(own["d.fits"], "mine");
        Assert.Contains(
            "d.fits exists",
            own.Command.Run(question).Expect(ExitCodes.UnwritableOutput).Error,
            StringComparison.Ordinal
        );
        Assert.Equal("mine", File.ReadAllText(own["d.fits"]));
        own.Command.Run([.. question, "--overwrite"]).Expect(ExitCodes.Answered);
        Assert.True(new FileInfo(own["d.fits"]).Length > 100_000);
        SortedDictionary<string, string> before = TemporaryFolder.Digests(Profile);
        foreach (
            string target in new[]
            {
                Path.Combine(Profile, "profile.json"),
                Path.Combine(Profile, "maps", "pedestal.fits"),
            }
        )
            own.Command.Run([.. question[..^1], target, "--overwrite"]).Expect(ExitCodes.WrongCommandLine);
        Assert.Equal(before, TemporaryFolder.Digests(Profile));
    }

    [Fact]
    public void AFolderThatCannotBeWrittenIsExitCode4()
    {
        File.WriteAllText(own["file"], "");
        CommandRun run = own
            .Command.Run("darks", "predict", Profile, "--temperature", "-5", "--exposure", "60", "--out", "file/d.fits")
            .Expect(ExitCodes.UnwritableOutput);
        Assert.Contains("file/d.fits: cannot be written", run.Error, StringComparison.Ordinal);
    }

    [FullDiskFact]
    public void AFullDiskIsExitCode4AndLeavesNothing()
    {
        string full = own["small"];
        FullDisk.Mount(full, 64);
        try
        {
            own.Command.Run(
                    "darks",
                    "predict",
                    Profile,
                    "--temperature",
                    "-5",
                    "--exposure",
                    "60",
                    "--out",
                    "small/d.fits"
                )
                .Expect(ExitCodes.UnwritableOutput);
            Assert.Empty(Directory.EnumerateFileSystemEntries(full));
        }
        finally
        {
            FullDisk.Unmount(full);
        }
    }

    private void Copy()
    {
        Directory.CreateDirectory(own["copy/maps"]);
        File.Copy(Path.Combine(Profile, "profile.json"), own["copy/profile.json"], overwrite: true);
        foreach (string map in Directory.EnumerateFiles(Path.Combine(Profile, "maps")))
            File.Copy(map, Path.Combine(own["copy/maps"], Path.GetFileName(map)), overwrite: true);
    }

    /// <summary>A dark of 300 s at 0 °C, computed.</summary>
    private CommandRun Computed(params string[] more) =>
        own.Command.Run([
            "darks",
            "predict",
            Profile,
            "--temperature",
            "0",
            "--exposure",
            "300",
            "--out",
            "d.fits",
            .. more,
        ]);
}
