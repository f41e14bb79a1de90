using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>
/// Mean bias and mean flat → defect lines, boundaries of taps, split of level and response into rows, columns and
/// pixels.
/// </summary>
internal static class StructureRecipe
{
    private const double MinLevel = 0.1; // of the read noise: a line off by less is lost in any frame
    private const double MinResponse = 0.005;

    /// <summary>Measures defect lines, boundaries and structure; whatever is found is also logged.</summary>
    public static StructureResult Measure(ModeFrames mode, BiasResult bias, FlatResult flats, FindingsLog log)
    {
        List<DefectLine> lines = [];
        List<SensorBoundary> boundaries = [];
        PatternStructure? unlit = null,
            structure = null;
        if (bias.Moments is { } moments)
        {
            unlit = DarkStructure.Measure(moments, mode.Mosaic, flats.ElectronsPerAdu(mode.Mosaic));
            var level = LineTable.Sum(moments.Mean, moments.Width, mode.Mosaic, relative: false);
            lines.AddRange(
                LineDefects.InTable(level, MinLevel * (bias.ReadNoiseAdu?.Value ?? 0), PatternKind.Level, 1, "ADU")
            );
            boundaries.AddRange(SensorBoundaries.Find(level, PatternKind.Level, 1, "ADU"));
            // The relative step of the noise is half that of its variance.
            if (moments.Frames > 3)
                boundaries.AddRange(
                    SensorBoundaries.Find(
                        LineTable.Sum(moments.Variance, moments.Width, mode.Mosaic, relative: true),
                        PatternKind.Noise,
                        50,
                        "%"
                    )
                );
        }
        int width = mode.Frames.FirstOrDefault()?.Samples.Width ?? 0;
        if (
            flats.Mean is not null
            && SmoothLight.Response(
                flats.Mean,
                bias.Moments?.Mean,
                [.. flats.Channels.Select(c => c.Pedestal)],
                width,
                mode.Mosaic
            )
                is { } response
        )
        {
            var table = LineTable.Sum(response, width, mode.Mosaic, relative: true);
            lines.AddRange(LineDefects.InTable(table, MinResponse, PatternKind.Response, 100, "%"));
            boundaries.AddRange(SensorBoundaries.Find(table, PatternKind.Response, 100, "%"));
            structure = ResponseStructure.Measure(response, width, mode.Mosaic, flats.MeanNoise);
        }
        Report(boundaries, log);
        return new()
        {
            Lines = lines,
            Boundaries = boundaries,
            Level = unlit,
            Response = structure,
        };
    }

    private static void Report(List<SensorBoundary> boundaries, FindingsLog log)
    {
        if (boundaries.Count == 0)
            return;
        IEnumerable<string> said = boundaries
            .OrderBy(b => b.Chance)
            .Take(4)
            .Select(b =>
                Invariant($"{Quantity(b.Kind)} changes by {b.Step.Value:+0.###;−0.###} ± ")
                + Invariant($"{b.Step.StandardUncertainty:0.###} {b.Step.Unit} at ")
                + Invariant($"{(b.Direction == PatternDirection.Across ? "column" : "row")} {b.Number}")
                + (b.Part == "whole" ? "" : $" ({b.Part})")
            );
        string where =
            $"{string.Join("; ", said)}{(boundaries.Count > 4 ? Invariant($"; {boundaries.Count - 4} more") : "")}";
        // Dust, a filter's edge and vignetting make steps in the light; only amplifiers make them without light too.
        if (boundaries.All(b => b.Kind == PatternKind.Response))
            log.Add(
                FindingCodes.ResponseStep,
                Severity.Note,
                $"The brightness of the flats has steps: {where}. Without light there are none, so the likely cause is the light "
                    + "(dust, an edge in the path, vignetting); flats of the same evening remove them."
            );
        else
            log.Add(
                FindingCodes.TapBoundary,
                Severity.Note,
                $"The sensor is read in parts with amplifiers of their own: {where}. Darks and flats of the "
                    + "same settings remove the seams as long as both parts drift alike; a seam left in a "
                    + "calibrated picture shows that they did not."
            );
    }

    private static string Quantity(PatternKind kind) =>
        kind switch
        {
            PatternKind.Noise => "read noise",
            PatternKind.Level => "bias level",
            _ => "response",
        };
}
