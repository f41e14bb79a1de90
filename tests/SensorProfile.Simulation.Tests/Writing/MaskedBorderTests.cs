using SensorProfile.Frames;
using SensorProfile.Raw;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Writing;

/// <summary>Pixels under the mask in the DNG of a simulated night.</summary>
public sealed class MaskedBorderTests : IDisposable
{
    private const int Left = 40,
        Top = 6;
    private readonly string _folder = Directory.CreateTempSubdirectory("sensorprofile-simulation-").FullName;

    private static readonly CameraDescription Camera = new()
    {
        Width = 64,
        Height = 200,
        ColourFilter = "RGGB",
        Bits = 14,
        Gain = 0.5,
        BiasLevel = 1000,
        ReadNoise = 3,
        RowNoise = 2,
        DarkCurrent = new DarkCurrentParameters
        {
            RateAtReference = 1,
            ReferenceTemperature = 10,
            DoublingTemperature = 6,
        },
        MaskedBorder = new MaskedBorder
        {
            Left = Left,
            Top = Top,
            DarkShare = 0.5,
            LevelOffset = 7,
        },
        Files = FrameFiles.CompressedDng,
        Shots =
        [
            new Shot { Kind = FrameKind.Bias, Temperature = 10 },
            new Shot
            {
                Kind = FrameKind.Dark,
                Exposure = 200,
                Temperature = 10,
            },
        ],
    };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void ThePixelsThatSeeLightAreThoseOfTheNightWithoutABorder()
    {
        Simulator.Write(Camera, _folder, 3);
        var night = new SimulatedNight(Camera with { MaskedBorder = new MaskedBorder() }, 3);
        foreach (SimulatedFrame frame in night.Frames)
        {
            using RawFile file = RawFile.Open(Path.Combine(_folder, frame.FileName));
            Assert.Equal(RawCompression.LosslessJpeg, file.Storage.Compression);
            Assert.Equal(new RawArea(Top, Left, Top + 200, Left + 64), file.Mosaic.ActiveArea);
            Assert.Equal(2, file.Mosaic.MaskedAreas.Count);
            var pixels = new ushort[64 * 200];
            file.ReadRows(0, pixels);
            Assert.Equal(night.Render(frame), pixels);
        }
    }

    [Fact]
    public void MaskedPixelsHaveTheirOwnLevelAndDarkChargeAndTheRowsNoise()
    {
        Simulator.Write(Camera, _folder, 3);
        double[] levels = [1007, 1007 + (0.5 * 200 / 0.5)]; // offset; half a rate of 1 e-/s over 200 s at 0.5 e-/ADU
        SimulatedFrame[] frames = [.. new SimulatedNight(Camera, 3).Frames];
        for (int i = 0; i < frames.Length; i++)
        {
            using RawFile file = RawFile.Open(Path.Combine(_folder, frames[i].FileName));
            int width = file.Mosaic.SensorWidth;
            var all = new ushort[width * file.Mosaic.SensorHeight];
            file.ReadSensorRows(0, all);
            double[] border = [.. Enumerable.Range(Top, 200).Select(row => Mean(all.AsSpan(row * width, Left)))];
            double[] seen = [.. Enumerable.Range(Top, 200).Select(row => Mean(all.AsSpan((row * width) + Left, 64)))];
            // the mean of 200 rows has a standard error of row noise 4 ADU/√200 = 0.28, pixels add 0.24 at the most
            Assert.InRange(border.Average(), levels[i] - 1.6, levels[i] + 1.6);
            // rows: 16 ADU² shared; own noise of 40 and 64 pixels leaves 36/40, in the dark 236/40 and 436/64
            double least = i == 0 ? 0.9 : 0.55; // expected 0.96 and 0.72, with 200 rows ± 0.04 at the most
            Assert.InRange(Correlation(border, seen), least, 1);
        }
    }

    [Fact]
    public void ADescriptionSaysHowWideTheBorderIs()
    {
        const string text = """
            { "width": 32, "height": 20, "files": "compressed-dng", "maskedBorder": { "left": 12 }, "shots": [{ "kind": "bias" }] }
            """;
        CameraDescription camera = CameraDescription.Parse(text);
        Assert.Equal(new MaskedBorder { Left = 12 }, camera.MaskedBorder);
        Assert.Equal(FrameFiles.CompressedDng, camera.Files);
        CameraDescriptionException problem = Assert.Throws<CameraDescriptionException>(() =>
            CameraDescription.Parse(text.Replace("12", "-1", StringComparison.Ordinal))
        );
        Assert.Contains("maskedBorder.left", problem.Message, StringComparison.Ordinal);
    }

    private static double Mean(ReadOnlySpan<ushort> codes)
    {
        double sum = 0;
        foreach (ushort code in codes)
            sum += code;
        return sum / codes.Length;
    }

    private static double Correlation(double[] a, double[] b)
    {
        (double meanA, double meanB) = (a.Average(), b.Average());
        double together = a.Zip(b, (x, y) => (x - meanA) * (y - meanB)).Sum();
        return together / Math.Sqrt(a.Sum(x => (x - meanA) * (x - meanA)) * b.Sum(y => (y - meanB) * (y - meanB)));
    }
}
