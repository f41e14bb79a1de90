using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Characterisation;

/// <summary>The masked border of simulated DNG nights against what they were made from.</summary>
public sealed class MaskedBorderTests(ITestOutputHelper output)
{
    private const double Gain = 0.5,
        ReadNoise = 3,
        RowNoise = 1,
        Offset = 4;

    [Fact]
    public void LevelNoiseAndShiftAreThoseOfTheSimulation()
    {
        const int nights = 10;
        List<double> difference = [],
            noise = [],
            row = [],
            shift = [],
            charge = [];
        for (ulong seed = 1; seed <= nights; seed++)
        {
            using var session = new SimulatedSession(Camera(new Pedestal { Jitter = 0.3 }, clamped: false), seed);
            CameraProfile profile = Characterise(session);
            MaskedBorderProfile border = profile.Modes[0].FixedPattern!.MaskedBorder!;
            // two of 40 columns lie beside the pixels that see light in no way different here: none is left out
            Assert.Equal(
                (10, 0, 40, 200, 8000L),
                (border.Top, border.Left, border.Width, border.Height, border.Pixels)
            );
            difference.Add(Z(border.Difference!, session.Truth.BiasLevel - 1000 - Offset));
            noise.Add(Z(border.ReadNoiseAdu!, Math.Sqrt((ReadNoise * ReadNoise) + (RowNoise * RowNoise)) / Gain));
            row.Add(Z(border.RowNoiseAdu!, RowNoise / Gain));
            MaskedBorderSet longest = border.Sets.MaxBy(s => s.Level!.Value)!;
            shift.Add(Z(longest.Shift!, 0));
            charge.Add(Z(longest.Charge!, 0.8 * 2 * 60 / Gain));
            Assert.DoesNotContain(profile.Findings, f => f.Code is "masked-border-clamped" or "masked-border-moves");
            Assert.Contains(profile.Findings, f => f.Code == "masked-border-differs");
            Assert.Equal(8 + 16, border.Frames.Count);
        }
        foreach (List<double> z in new[] { difference, noise, row, shift, charge })
        {
            output.WriteLine(string.Join(' ', z.Select(v => FormattableString.Invariant($"{v:F1}"))));
            // the mean of ten has a standard error of 0.32
            Assert.InRange(z.Average(), -1.1, 1.1);
            Assert.InRange(z.Max(Math.Abs), 0, 4);
        }
    }

    [Fact]
    public void ACameraThatHoldsItsLevelIsFoundByItsBorder()
    {
        using var session = new SimulatedSession(Camera(new Pedestal(), clamped: true), 3);
        Finding finding = Assert.Single(Characterise(session).Findings, f =>
            f.Code.StartsWith("masked-border-", StringComparison.Ordinal) && f.Severity == Severity.Warning
        );
        Assert.Equal("masked-border-clamped", finding.Code);
        Assert.StartsWith("The camera pins the level of its masked border: at 60 s", finding.Message);
    }

    [Fact]
    public void ALevelThatDriftsWithTemperatureIsMeasuredByTheBorder()
    {
        // bias frames at 10 °C, darks at 10 and 20 °C: 1.5 ADU per degree make 15 ADU
        using var session = new SimulatedSession(Camera(new Pedestal { DriftPerDegree = 1.5 }, clamped: false), 3);
        CameraProfile profile = Characterise(session);
        MaskedBorderSet[] warm = [.. profile.Modes[0].FixedPattern!.MaskedBorder!.Sets.Where(s => s.Temperature > 15)];
        Assert.Equal(2, warm.Length);
        Assert.All(warm, s => Assert.InRange(Z(s.Shift!, 15), -4, 4));
        Assert.Contains(profile.Findings, f => f.Code == "masked-border-moves");
    }

    [Fact]
    public void CompressedFilesGiveTheSameBorder()
    {
        CameraDescription camera = Camera(new Pedestal(), clamped: false);
        using var plain = new SimulatedSession(camera, 3);
        using var packed = new SimulatedSession(camera with { Files = FrameFiles.CompressedDng }, 3);
        (MaskedBorderProfile a, MaskedBorderProfile b) = (Border(plain), Border(packed));
        Assert.Equal(
            (a.Level, a.Difference, a.ReadNoiseAdu, a.RowNoiseAdu),
            (b.Level, b.Difference, b.ReadNoiseAdu, b.RowNoiseAdu)
        );
        Assert.Equal(a.Sets, b.Sets);
        Assert.Equal(a.Frames, b.Frames);
    }

    private static MaskedBorderProfile Border(SimulatedSession session) =>
        Characterise(session).Modes[0].FixedPattern!.MaskedBorder!;

    private static CameraProfile Characterise(SimulatedSession session) =>
        Characteriser
            .Run(
                FrameInventory.Read([session.Folder], new InventoryOptions { NamesSay = true }),
                new CharacterisationOptions { Quick = true }
            )
            .Profile;

    private static double Z(Measurement measured, double truth) =>
        (measured.Value - truth) / measured.StandardUncertainty;

    private static CameraDescription Camera(Pedestal pedestal, bool clamped) =>
        new()
        {
            Width = 160,
            Height = 200,
            ColourFilter = "RGGB",
            Bits = 14,
            Gain = Gain,
            BiasLevel = 1000,
            ReadNoise = ReadNoise,
            RowNoise = RowNoise,
            BiasPattern = new BiasPattern { Column = 0.5, Pixel = 1 },
            Pedestal = pedestal,
            DarkCurrent = new DarkCurrentParameters
            {
                RateAtReference = 2,
                ReferenceTemperature = 20,
                DoublingTemperature = 6,
            },
            ClampBlack = clamped,
            MaskedBorder = new MaskedBorder
            {
                Left = 40,
                Top = 10,
                DarkShare = 0.8,
                LevelOffset = Offset,
            },
            Cooled = false,
            Files = FrameFiles.Dng,
            Settings = new HeaderSettings { Iso = 800 },
            Shots =
            [
                Shot(FrameKind.Bias, 0, 10, 8, 0),
                .. new[] { 500.0, 1500, 3000, 4500, 6000 }.Select(
                    (level, i) => Shot(FrameKind.Flat, 0.5 * (i + 1), 10, 2, level)
                ),
                Shot(FrameKind.Dark, 20, 10, 4, 0),
                Shot(FrameKind.Dark, 60, 10, 4, 0),
                Shot(FrameKind.Dark, 20, 20, 4, 0),
                Shot(FrameKind.Dark, 60, 20, 4, 0),
            ],
        };

    private static Shot Shot(FrameKind kind, double exposure, double celsius, int count, double level) =>
        new()
        {
            Kind = kind,
            Exposure = exposure,
            Temperature = celsius,
            Count = count,
            Level = level,
        };
}
