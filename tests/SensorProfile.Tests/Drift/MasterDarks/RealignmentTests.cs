using SensorProfile.Drift.Identity;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.Fits;
using SensorProfile.Simulation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift.MasterDarks;

/// <summary>
/// A good master, written turned, shifted, cropped or binned: named so, and judged as the good master it is.
/// </summary>
public sealed class RealignmentTests(ITestOutputHelper output) : IDisposable
{
    private const int Width = 200,
        Height = 150;

    private static readonly Lazy<float[]> Good = new(() => [.. SimulatedMasters.Library().Dark.Select(d => (float)d)]);

    private readonly SimulatedMasters masters = new();

    public void Dispose() => masters.Dispose();

    [Fact]
    public void AllEightOrientationsAreNamedAndJudgedAfterTurningBack()
    {
        (string Words, FrameOrientation Back)[] ways =
        [
            ("rotated by 180°", FrameOrientation.HalfTurn),
            ("mirrored left to right", FrameOrientation.MirrorColumns),
            ("mirrored top to bottom (its rows run the other way)", FrameOrientation.MirrorRows),
            ("rotated by 90° anticlockwise", FrameOrientation.QuarterTurnClockwise),
            ("rotated by 90° clockwise", FrameOrientation.QuarterTurnAnticlockwise),
            ("mirrored along a diagonal (rows and columns exchanged)", FrameOrientation.Transpose),
            (
                "mirrored along the other diagonal (rows and columns exchanged, both reversed)",
                FrameOrientation.AntiTranspose
            ),
        ];
        string plain = Write("plain.fits", Good.Value, Width);
        string[] files = [plain, .. ways.Select(w => Turned(w.Back))];
        DarkLibraryAnswer answer = Check(files);
        Assert.Null(answer.Masters[0].Realigned);
        foreach ((MasterVerdict master, string words) in answer.Masters.Skip(1).Zip(ways, (m, w) => (m, w.Words)))
        {
            Assert.Equal((words, CheckVerdict.Keep), (master.Realigned, master.Verdict));
            Assert.Equal(answer.Masters[0].Loss!.Value, master.Loss!.Value, 0.02);
            Assert.Null(master.Reason.Contradiction);
        }
        Assert.Equal(7, answer.Masters.Count(m => m.Realigned is not null));
    }

    /// <summary>Seen: a shift of one pixel was called "62 °C warmer", a half turn "107 °C warmer".</summary>
    [Theory]
    [InlineData(1, 0, "shifted by 1 px in x")]
    [InlineData(0, -1, "shifted by −1 px in y")]
    [InlineData(-4, 3, "shifted by −4 px in x and 3 px in y")]
    [InlineData(4, 4, "shifted by 4 px in x and 4 px in y")]
    public void ShiftsUpToFourPixelsAreNamedAndJudgedAfterShiftingBack(int dx, int dy, string words)
    {
        var shifted = new float[Width * Height];
        for (int y = 0; y < Height; y++)
        for (int x = 0; x < Width; x++)
            // what is shifted in at the edges is the median, as programs that align frames fill it
            shifted[y * Width + x] =
                x - dx is >= 0 and < Width && y - dy is >= 0 and < Height ? Good.Value[(y - dy) * Width + x - dx] : 600;
        DarkLibraryAnswer answer = Check([Write("shifted.fits", shifted, Width)]);
        Assert.Equal(CheckVerdict.Keep, answer.Library);
        Assert.Equal(words, answer.Masters[0].Realigned);
    }

    [Fact]
    public void ACropIsFoundByItsOffset()
    {
        var part = new float[120 * 90];
        for (int y = 0; y < 90; y++)
            Array.Copy(Good.Value, (y + 37) * Width + 51, part, y * 120, 120);
        MasterVerdict master = Check([Write("crop.fits", part, 120)]).Masters[0];
        Assert.Equal(CheckVerdict.Keep, master.Verdict);
        Assert.Equal(
            "cropped to 120 × 90 px, its first pixel at column 52, row 38 of the fresh darks",
            master.Realigned
        );
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)] // summed, as most drivers bin
    public void ABinnedMasterIsComparedWithFreshDarksBinnedLikewise(int times)
    {
        float[] binned = [.. FreshDarks.Binned(Good.Value, Width, 2).Select(v => v * times)];
        MasterVerdict master = Check([Write("binned.fits", binned, Width / 2, "2x2")]).Masters[0];
        Assert.Equal(("binned 2 × 2", CheckVerdict.Keep), (master.Realigned, master.Verdict));
    }

    [Fact]
    public void AMasterOfAnotherSensorIsCalledThat()
    {
        var night = new SimulatedNight(SimulatedMasters.Camera(bias: 0) with { Serial = 311 }, seed: 5);
        float[] mean = new float[Width * Height];
        foreach (SimulatedFrame frame in night.Frames)
        {
            ushort[] pixels = night.Render(frame);
            for (int i = 0; i < mean.Length; i++)
                mean[i] += pixels[i] / (float)night.Frames.Count;
        }
        DarkLibraryAnswer answer = Check([Write("other.fits", mean, Width)]);
        Assert.Equal(CheckVerdict.Retake, answer.Library);
        Assert.Equal(MasterGround.OtherSensor, answer.Masters[0].Reason.Ground);
    }

    private string Turned(FrameOrientation back)
    {
        var frame = new FrameAlignment(back, 0, 0, 0, 0);
        (int w, int h) = frame.SwapsSides ? (Height, Width) : (Width, Height);
        frame = frame with { Width = w, Height = h };
        var turned = new float[Width * Height];
        for (int y = 0; y < h; y++)
        for (int x = 0; x < w; x++)
        {
            (int column, int row) = frame.Moved(x, y);
            turned[y * w + x] = Good.Value[row * Width + column];
        }
        return Write($"{back}.fits", turned, w);
    }

    private string Write(string name, float[] pixels, int width, string binning = "1x1")
    {
        string path = Path.Combine(masters.Folder, name);
        List<FitsCard> cards =
        [
            FitsCard.Of("IMAGETYP", "Master Dark"),
            FitsCard.Of("GAIN", 100),
            FitsCard.Of("OFFSET", 30),
            FitsCard.Of("CCD-TEMP", -10.0),
            FitsCard.Of("EXPTIME", 300.0),
            FitsCard.Of("NCOMBINE", 40),
            FitsCard.Of("XBINNING", binning[0] - '0'),
            FitsCard.Of("YBINNING", binning[0] - '0'),
        ];
        FitsWriter.Write(path, new FitsImage<float>(width, pixels.Length / width, pixels, cards));
        return path;
    }

    private DarkLibraryAnswer Check(IReadOnlyList<string> files)
    {
        DarkLibraryAnswer answer = DarkLibraryCheck.Run(
            files,
            masters.Fresh(SimulatedMasters.Camera()),
            SimulatedMasters.Profile
        );
        output.WriteLine($"{answer.Library}");
        foreach (MasterVerdict m in answer.Masters)
            output.WriteLine($"{Path.GetFileName(m.File)}: {m.Verdict}; {m.Reason}");
        return answer;
    }
}
