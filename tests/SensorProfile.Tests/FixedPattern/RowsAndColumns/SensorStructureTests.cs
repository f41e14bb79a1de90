using SensorProfile.Profiles;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Truth;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.FixedPattern.RowsAndColumns;

/// <summary>Lines and taps of simulated cameras, from their bias frames and flats to the profile.</summary>
public sealed class SensorStructureTests(ITestOutputHelper output)
{
    private static CameraDescription Camera(string? filter = null) =>
        new()
        {
            Name = "Tarn-9M",
            Width = 320,
            Height = 240,
            Gain = 0.5,
            ReadNoise = 3,
            FullWell = 30000,
            BiasLevel = 500,
            Serial = 5,
            ColourFilter = filter,
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.1, DoublingTemperature = 6 },
            ResponseNonuniformity = 0.01,
            Vignetting = 0.2,
            DarkNonuniformity = 0.2,
            BiasPattern = new BiasPattern
            {
                Column = 0.3,
                Row = 0.2,
                Pixel = 0.5,
            },
            HotPixels = new HotPixels { Share = 0.005 },
            Shots = Nights.Full(30000, [-10], [60, 300], darks: 3, bias: 12),
        };

    private (FixedPatternProfile Pattern, Finding[] Findings, SimulationTruth Truth) Measure(
        CameraDescription camera,
        ulong seed
    )
    {
        using var session = new SimulatedSession(camera, seed);
        CameraProfile profile = session.Characterise().Profile;
        FixedPatternProfile pattern = profile.Modes[0].FixedPattern!;
        foreach (DefectLine line in pattern.Lines)
            output.WriteLine(
                $"{line.Direction} {line.Number} rows {line.From}–{line.To}: {line.Kind} {line.Excess.Value:0.###} ± "
                    + $"{line.Excess.StandardUncertainty:0.###} {line.Excess.Unit}"
            );
        foreach (SensorBoundary b in pattern.Boundaries)
            output.WriteLine(
                $"{b.Direction} {b.Number} {b.Part}: {b.Kind} {b.Step.Value:0.###} ± "
                    + $"{b.Step.StandardUncertainty:0.###} {b.Step.Unit}, chance {b.Chance:0.0e0}"
            );
        return (pattern, [.. profile.Findings.Where(f => f.Code == "tap-boundary")], session.Truth);
    }

    [Theory, InlineData(null, 51), InlineData(null, 52), InlineData("RGGB", 53)]
    public void ASensorReadInOnePieceShowsNoLineAndNoBoundary(string? filter, ulong seed)
    {
        (FixedPatternProfile pattern, Finding[] findings, _) = Measure(Camera(filter), seed);
        Assert.Empty(pattern.Lines);
        Assert.Empty(pattern.Boundaries);
        Assert.Empty(findings);
        Assert.Equal(0, pattern.Defects!.Columns + pattern.Defects.Rows);
        // PRNU of 1 % from pixel to pixel, no lines in it: 320 columns of 240 pixels hide 0.01 %.
        Assert.InRange(pattern.ResponseStructure!.Pixel!.Value, 0.96, 1.04);
        Assert.InRange(pattern.ResponseStructure.Column!.Value, 0, 0.06);
        Assert.InRange(pattern.ResponseStructure.Row!.Value, 0, 0.06);
    }

    [Theory, InlineData(null), InlineData("RGGB")]
    public void HalvesWithAmplifiersOfTheirOwnAreFound(string? filter)
    {
        (FixedPatternProfile pattern, Finding[] findings, _) = Measure(
            Camera(filter) with
            {
                Taps =
                [
                    new Tap
                    {
                        FirstColumn = 161,
                        Offset = 4,
                        Response = 1.01,
                    },
                    new Tap { FirstRow = 121, Noise = 1.3 },
                ],
            },
            54
        );
        Boundary(pattern, PatternDirection.Across, PatternKind.Level, 161, 4);
        Boundary(pattern, PatternDirection.Across, PatternKind.Response, 161, 1);
        Boundary(pattern, PatternDirection.Down, PatternKind.Noise, 121, 30);
        Assert.Equal(3, pattern.Boundaries.Count);
        Assert.Empty(pattern.Lines);
        Assert.Contains("column 161", Assert.Single(findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AQuadrantOfItsOwnIsFoundInItsHalf()
    {
        (FixedPatternProfile pattern, _, _) = Measure(
            Camera() with
            {
                Taps =
                [
                    new Tap
                    {
                        FirstColumn = 161,
                        FirstRow = 121,
                        Offset = 6,
                    },
                ],
            },
            55
        );
        SensorBoundary across = Assert.Single(pattern.Boundaries, b =>
            b.Direction == PatternDirection.Across && b.Part == "second half"
        );
        Assert.InRange(across.Number, 160, 162);
        Assert.InRange((across.Step.Value - 6) / across.Step.StandardUncertainty, -4, 4);
        Assert.Contains(pattern.Boundaries, b => b.Direction == PatternDirection.Down && b.Part == "second half");
    }

    [Theory, InlineData(null), InlineData("RGGB")]
    public void AColumnThatIsDeadInLightOrOffInBiasIsFoundThere(string? filter)
    {
        (FixedPatternProfile light, _, SimulationTruth lit) = Measure(
            Camera(filter) with
            {
                BadColumns = new BadLines { Count = 3, Response = 0.5 },
            },
            56
        );
        Lines(light, lit, PatternKind.Response, -50, 6);
        (FixedPatternProfile level, _, SimulationTruth unlit) = Measure(
            Camera(filter) with
            {
                BadColumns = new BadLines { Count = 3, Offset = 8 },
            },
            57
        );
        Lines(level, unlit, PatternKind.Level, 8, 0.6);
        Assert.Equal(3, level.Defects!.Columns);
        Assert.DoesNotContain(level.Lines, l => l.Kind == PatternKind.Response);
    }

    private static void Lines(
        FixedPatternProfile pattern,
        SimulationTruth truth,
        PatternKind kind,
        double excess,
        double tolerance
    )
    {
        DefectLine[] found = [.. pattern.Lines.Where(l => l.Kind == kind)];
        Assert.Equal(truth.BadColumns.Select(c => c.X).Order(), found.Select(l => l.Number).Order());
        // The columns begin somewhere in the upper half: the part named lies below that but for a quarter of the
        // height.
        Assert.All(found, l => Assert.Equal(LineDirection.Column, l.Direction));
        Assert.All(found, l =>
            Assert.InRange(
                l.Excess.Value,
                excess - Math.Abs(excess) * 0.5 - tolerance,
                excess + Math.Abs(excess) * 0.5 + tolerance
            )
        );
        Assert.Contains(found, l => Math.Abs(l.Excess.Value - excess) < tolerance);
    }

    private static void Boundary(
        FixedPatternProfile pattern,
        PatternDirection direction,
        PatternKind kind,
        int number,
        double step
    )
    {
        SensorBoundary found = Assert.Single(pattern.Boundaries, b => b.Direction == direction && b.Kind == kind);
        Assert.Equal("whole", found.Part);
        Assert.InRange(found.Number, number - 1, number + 1);
        Assert.InRange((found.Step.Value - step) / found.Step.StandardUncertainty, -4, 4);
    }
}
