using SensorProfile.DarkCurrent.Results;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Thermometer;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Characterisation;

/// <summary>Replaces the darks' header temperatures by those of their hot pixels.</summary>
/// <remarks>
/// A first measurement with the header temperatures finds the hot pixels and their laws. Their common brightness gives
/// every frame's temperature relative to the others taken at that temperature; the median of the sets' readings sets
/// the zero, so that a single wrong reading does not move it.
/// </remarks>
internal static class HotPixelTemperatures
{
    /// <summary>
    /// The mode with replaced temperatures; the mode as it was, with a finding, where the hot pixels cannot give them.
    /// </summary>
    public static ModeFrames Replace(
        ModeFrames mode,
        BiasResult bias,
        FlatResult flats,
        DefectClass[]? response,
        IReadOnlyList<DefectLine> lines,
        CharacterisationOptions options,
        StageProgress stages,
        FindingsLog log
    )
    {
        bool ordered = NightsByHotPixels.Report(mode, bias, flats, response, lines, options, stages, log);
        if (ordered && mode.SetsOf(FrameKind.Dark).All(s => s.Set.TemperatureCelsius is null))
            return mode;
        var scratch = new FindingsLog();
        DarkResult darks = DarkRecipe.Measure(mode, bias, flats, options, stages, scratch);
        PatternResult? pattern = PatternRecipe.Prepare(
            mode,
            bias,
            flats,
            lines,
            darks,
            options,
            predict: false,
            stages,
            scratch
        )
            is { } prepared
            ? PatternRecipe.Measure(prepared, response, mode.BytesPerFrame, stages, scratch)
            : null;
        if (pattern is not { FrameTemperatures.Count: > 0 } found)
        {
            log.Add(
                FindingCodes.TemperaturesNotReplaced,
                Severity.Warning,
                "The temperatures of the darks could not be taken from their hot pixels, which are too few or too "
                    + "faint, and were left as the headers say: longer or warmer darks would show more of them."
            );
            return mode;
        }
        log.Add(
            found
                .Findings.Where(f => f.Code is FindingCodes.ProbeMissesDrift or FindingCodes.ProbeOffsetBetweenSets)
                .Select(ThermometerFindings.WhereReplaced)
        );
        ModeFrames replaced = mode with
        {
            Sets = [.. mode.Sets.Select(s => s.Set.Kind == FrameKind.Dark ? Replaced(s, found.FrameTemperatures) : s)],
        };
        double[] changes =
        [
            .. mode
                .Frames.Zip(replaced.Frames, (a, b) => b.Frame.TemperatureCelsius - a.Frame.TemperatureCelsius)
                .OfType<double>()
                .Where(c => c != 0),
        ];
        double largest = changes.Select(Math.Abs).DefaultIfEmpty(0).Max();
        log.Add(
            FindingCodes.TemperaturesByHotPixels,
            Severity.Note,
            Invariant($"The temperatures of {changes.Length} darks are those of their hot pixels, as you asked; ")
                + Invariant($"they differ from the headers by up to {largest:0.00} °C.")
        );
        return replaced;
    }

    private static ScreenedSet Replaced(ScreenedSet set, IReadOnlyDictionary<string, double> temperatures)
    {
        ScreenedFrame[] frames =
        [
            .. set.Frames.Select(f =>
                temperatures.TryGetValue(f.Name, out double celsius)
                    ? f with
                    {
                        Frame = f.Frame with { TemperatureCelsius = Math.Round(celsius, 4) },
                    }
                    : f
            ),
        ];
        double[] known = [.. frames.Select(f => f.Frame.TemperatureCelsius).OfType<double>()];
        return known.Length == 0
            ? set
            : new(
                set.Set with
                {
                    TemperatureCelsius = known.Average(),
                    Frames = [.. frames.Select(f => f.Frame)],
                },
                frames
            );
    }
}
