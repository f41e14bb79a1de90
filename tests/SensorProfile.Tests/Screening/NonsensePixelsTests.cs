using SensorProfile.Characterisation.Maps;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.Screening;

/// <summary>
/// Pixels that no sensor gives: whatever comes out, it is a profile with finite numbers, written and read again, and
/// what is empty has a finding.
/// </summary>
public sealed class NonsensePixelsTests
{
    private const int Width = 48;
    private const int Height = 32;

    private static readonly CameraDescription camera = new()
    {
        Name = "Tarn-9M",
        Width = Width,
        Height = Height,
        Gain = 0.8,
        ReadNoise = 2,
        FullWell = 40000,
        BiasLevel = 500,
        DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.3, DoublingTemperature = 6 },
        Shots = Nights.Full(40000, [-10, 0, 10], [30, 120, 300], darks: 3, bias: 9),
    };

    [Theory]
    [InlineData("bias")]
    [InlineData("dark")]
    [InlineData("flat")]
    [InlineData("")]
    public void FramesThatNeverChangeEndInNullsWithFindings(string kind)
    {
        CameraProfile profile = Measured(camera, kind, (_, _, _) => 500);
        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.True(kind == "dark" ? mode.DarkCurrent?.DoublingTemperature is null : mode.ReadNoise is null);
        Assert.Contains(profile.Findings, f => f.Severity == Severity.Refusal);
    }

    // Constant bias frames hide their noise between two codes; the flats still tell the gain.
    [Fact]
    public void ConstantBiasFramesLeaveTheGainOfTheFlats()
    {
        ModeProfile mode = Assert.Single(Measured(camera, "bias", (_, _, _) => 500).Modes);
        Assert.Null(mode.ReadNoise);
        Assert.Equal(0.8, mode.Gain!.Value, 5 * mode.Gain.StandardUncertainty);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("RGGB")]
    public void ColumnsStuckAtTheEndsOfTheCodesCostNoSession(string? filter) =>
        Measured(camera with { ColourFilter = filter }, "", (value, column, _) => (column % 4) switch
            {
                1 => 0,
                3 => 65535,
                _ => value,
            });

    // Float frames with a few pixels that are no numbers were left out as calibrated, and with them the session.
    [Fact]
    public void AFewPixelsWithoutAValueCostThosePixels()
    {
        using var session = new SimulatedSession(camera, 4);
        foreach (string path in Directory.GetFiles(session.Folder, "*.fits"))
            RawPixels.RewriteAsFloats(path, Width, Height, (x, y) => (x, y) == (7, 9));
        CameraProfile profile = Check(session.Characterise());
        Assert.Empty(profile.Frames.Rejected);
        ModeProfile mode = Assert.Single(profile.Modes);
        Assert.Equal(0.8, mode.Gain!.Value, 5 * mode.Gain.StandardUncertainty);
        Finding said = Assert.Single(profile.Findings, f => f.Code == "pixels-without-value");
        Assert.Contains("at most 1 in one", said.Message, StringComparison.Ordinal);
    }

    // Two rows, an edge, and one pixel in fifty: 9 % of all, which cost the session once. The same in every frame, or
    // in one of them.
    [Theory]
    [InlineData("")]
    [InlineData("dark_0003")]
    [InlineData("RGGB")]
    public void ManyPixelsWithoutAValueCostThosePixels(string which)
    {
        static bool IsBlank(int x, int y) => y is 9 or 14 || x < 2 || (31 * x + 17 * y) % 50 == 3;
        CameraDescription own = which == "RGGB" ? camera with { ColourFilter = which } : camera;
        using var session = new SimulatedSession(own, 4);
        CameraProfile whole = session.Characterise().Profile;
        string[] paths = [.. Directory.GetFiles(session.Folder, "*.fits").Order(StringComparer.Ordinal)];
        foreach (string path in which.StartsWith("dark", StringComparison.Ordinal) ? paths[12..13] : paths)
            RawPixels.RewriteAsFloats(path, Width, Height, IsBlank);
        CharacterisationResult result = session.Characterise();
        CameraProfile profile = Check(result);
        Assert.Empty(profile.Frames.Rejected);
        Assert.Single(profile.Findings, f => f.Code == "pixels-without-value");
        Assert.DoesNotContain(profile.Findings, f =>
            f.Code != "pixels-without-value" && whole.Findings.All(before => before.Code != f.Code)
        );
        ModeProfile mode = Assert.Single(profile.Modes),
            before = Assert.Single(whole.Modes);
        Near(before.Gain!, mode.Gain!);
        Near(before.ReadNoise!, mode.ReadNoise!);
        Near(before.DarkCurrent!.RateAtReference!, mode.DarkCurrent!.RateAtReference!);
        Assert.Equal(before.FixedPattern!.Lines.Count, mode.FixedPattern!.Lines.Count);
        ModeMaps maps = Assert.Single(result.Maps);
        for (int i = 0; i < Width * Height; i++)
            Assert.Equal(IsBlank(i % Width, i / Width), float.IsNaN(maps.DarkRate![i]));
        Assert.DoesNotContain(Enumerable.Range(0, Width * Height), i =>
            IsBlank(i % Width, i / Width) && maps.Defects![i] != 0
        );

        static void Near(Measurement expected, Measurement measured) =>
            Assert.Equal(expected.Value, measured.Value, 2 * expected.StandardUncertainty);
    }

    [Fact]
    public void AFrameWithoutMostOfItsValuesIsLeftOut()
    {
        using var session = new SimulatedSession(camera, 4);
        string path = Directory.GetFiles(session.Folder, "dark*").Order(StringComparer.Ordinal).First();
        RawPixels.RewriteAsFloats(path, Width, Height, (_, y) => y > 14);
        RejectedFile left = Assert.Single(session.Characterise().Profile.Frames.Rejected);
        Assert.Equal(Path.GetFileName(path), left.File);
        Assert.Contains("more than half", left.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void ShearedRowsCostNoSession()
    {
        using var session = new SimulatedSession(camera, 3);
        foreach (string path in Directory.GetFiles(session.Folder, "*.fits"))
        {
            var rows = new int[Height, Width];
            RawPixels.Rewrite(path, Width, Height, (value, column, row) => rows[row, column] = value);
            RawPixels.Rewrite(path, Width, Height, (_, column, row) => rows[row, (column + 5 * row) % Width]);
        }
        Check(session.Characterise());
    }

    // Seeded: one bijection of the codes, or one cruel rule, for every frame or for one kind of frame.
    [Theory]
    [MemberData(nameof(Seeds))]
    public void ScrambledPixelsCostNoSession(int seed)
    {
        var random = new Random(seed);
        string kind = new[] { "", "bias", "dark", "flat" }[seed % 4];
        int odd = 2 * random.Next(32768) + 1,
            mask = random.Next(65536),
            shift = random.Next(1, 12),
            column = random.Next(2, 7);
        RawPixels.Change change = (seed % 7) switch
        {
            0 => (value, _, _) => value * odd & 0xFFFF,
            1 => (value, _, _) => value ^ mask,
            2 => (value, _, _) => value >> shift,
            3 => (value, _, _) => (value & 0xFF) << 8 | value >> 8,
            4 => (value, x, y) => (x + y) % column == 0 ? value : (y & 1) * 65535,
            5 => (_, _, _) => random.Next(65536),
            _ => (value, _, _) => 65535 - value,
        };
        Measured(seed % 3 == 0 ? camera with { ColourFilter = "RGGB" } : camera, kind, change);
    }

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 21)];

    private static CameraProfile Measured(CameraDescription camera, string kind, RawPixels.Change change)
    {
        using var session = new SimulatedSession(camera, 2);
        RawPixels.RewriteAll(session.Folder, kind, Width, Height, change);
        return Check(session.Characterise());
    }

    private static CameraProfile Check(CharacterisationResult result)
    {
        string path = Path.GetTempFileName();
        try
        {
            ProfileFile.Write(path, result.Profile); // refuses what is not finite
            CameraProfile read = ProfileFile.Read(path);
            foreach (ModeProfile mode in read.Modes)
                if (mode.Gain is null || mode.ReadNoiseAdu is null)
                    Assert.Contains(read.Findings, f => f.Severity == Severity.Refusal);
            return read;
        }
        finally
        {
            File.Delete(path);
        }
    }
}
