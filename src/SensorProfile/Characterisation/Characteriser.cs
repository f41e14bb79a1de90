using SensorProfile.Characterisation.Maps;
using SensorProfile.Characterisation.Summaries;
using SensorProfile.DarkCurrent.Results;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.RowsAndColumns;
using SensorProfile.Frames;
using SensorProfile.PhotonTransfer.Channels;
using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;
using SensorProfile.RawCheck;
using SensorProfile.Screening;

namespace SensorProfile.Characterisation;

/// <summary>The recipe: from a session's frames to a camera profile.</summary>
/// <remarks>
/// One camera at a time, mode by mode (gain, offset, binning, read-out). Every frame is looked at once and sifted; bias
/// pairs give read noise; flat pairs give gain, saturation, linearity; darks give dark current against exposure and
/// temperature. What is missing becomes null, with a finding that says which frames would supply it. The same frames
/// give the same profile at any thread count.
/// </remarks>
public static class Characteriser
{
    /// <summary>Measures a camera.</summary>
    /// <param name="inventory">The frames.</param>
    /// <param name="options">Tolerances, threads, clock.</param>
    /// <param name="progress">Receives progress; may be called from any thread.</param>
    /// <param name="ct">Stops the work between two strips of pixels.</param>
    /// <exception cref="ArgumentException">The thresholds make no sense
    /// (<see cref="DefectThresholds.Problem"/>).</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static CharacterisationResult Run(
        Inventory inventory,
        CharacterisationOptions options,
        IProgress<CharacterisationProgress>? progress = null,
        CancellationToken ct = default
    )
    {
        options.Stages?.Begin("opening the frames");
        var log = new FindingsLog();
        IReadOnlyList<Frame> frames = CameraSelection.Select(inventory.Frames, log);
        using FrameStack stack = FrameStack.Open(frames, cancellation: ct, threads: options.Threads);
        return Run(inventory, frames, stack, log, options, progress, ct);
    }

    /// <summary>Measures a camera from frames in memory.</summary>
    /// <param name="frames">Bias, dark and flat frames of one camera; each with a name of its own.</param>
    /// <param name="options">Tolerances, threads, clock.</param>
    /// <param name="progress">Receives progress; may be called from any thread.</param>
    /// <param name="ct">Stops the work between two strips of pixels.</param>
    /// <exception cref="ArgumentException">A frame does not have as many samples as its width and height say, two
    /// frames share a name, or the thresholds make no sense.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static CharacterisationResult Run(
        IReadOnlyList<FrameInMemory> frames,
        CharacterisationOptions options,
        IProgress<CharacterisationProgress>? progress = null,
        CancellationToken ct = default
    )
    {
        Inventory inventory = FrameInMemory.Inventory(frames, options.TemperatureTolerance);
        var log = new FindingsLog();
        IReadOnlyList<Frame> ofOne = CameraSelection.Select(inventory.Frames, log);
        var byName = frames.ToDictionary(f => f.Facts.Name, StringComparer.Ordinal);
        using FrameStack stack = FrameInMemory.Stack(ofOne.Select(f => byName[f.Name]));
        return Run(inventory, ofOne, stack, log, options, progress, ct);
    }

    private static CharacterisationResult Run(
        Inventory inventory,
        IReadOnlyList<Frame> frames,
        FrameStack stack,
        FindingsLog log,
        CharacterisationOptions options,
        IProgress<CharacterisationProgress>? progress,
        CancellationToken ct
    )
    {
        if (options.Thresholds?.Problem() is { } problem)
            throw new ArgumentException(problem, nameof(options));
        var stages = new StageProgress(progress, options.Threads ?? Environment.ProcessorCount, ct, options.Stages);
        log.LeaveOut(
            FindingCodes.FrameLeftOut,
            "Files that cannot be measured were left out; the list of rejected files says why."
                + (
                    stack.Refused.Count > 0
                        ? $" The first, {stack.Refused[0].Frame.Name}: {stack.Refused[0].Reason}"
                        : ""
                ),
            stack.Refused.Select(r => (r.Frame, r.Reason))
        );
        if (stack.Blanks is { Count: > 0 } blanks)
            log.Add(
                FindingCodes.PixelsWithoutValue,
                Severity.Warning,
                $"{Counted.Frames(blanks.Count)} have pixels without a value (at most {blanks.Max(b => b.Pixels)} in one): "
                    + "in levels and noise, others of their colour stand in for them; maps and defects leave these places out.",
                [.. blanks.Select(b => b.Name)]
            );
        var samples = (options.Stages?.Counting(stack.Samples) ?? stack.Samples).ToDictionary(
            s => s.Name,
            StringComparer.Ordinal
        );
        Frame[] readable = [.. frames.Where(f => samples.ContainsKey(f.Name))];

        List<MeasuredMode> modes = [];
        foreach (
            IGrouping<ModeSettings, Frame> mode in readable
                .Where(IsMeasured)
                .GroupBy(f => f.Settings)
                .OrderBy(g => g.Key, ModeOrder.ByGainThenOffset)
        )
        {
            log.Mode = ModeLabel.Text(mode.Key);
            modes.Add(MeasureMode([.. mode], samples, inventory, options, stages, log));
        }
        log.Mode = null;
        modes = [.. CarriedDarks.Fill(modes, log)];
        ReportUnused(readable, log);

        IEnumerable<ScreenedFrame> used = modes.SelectMany(m => m.Frames.Frames);
        stages.Stage("profile");
        var profile = new CameraProfile
        {
            CreatedUtc = options.Clock.GetUtcNow(),
            Software = new("sensorprofile", options.SoftwareVersion),
            Camera = CameraSummary.Summarise(readable, modes),
            Modes = [.. modes.Select(m => m.Profile)],
            Findings =
            [
                .. inventory.Findings,
                .. log.Findings,
                .. NullReasons.Find(modes, inventory, options.TemperatureTolerance),
            ],
            Frames = SessionSummary.Summarise(modes, inventory, log),
        };
        options.Stages?.End();
        return new(profile, [.. modes.Select(m => m.Maps)]);
    }

    private static MeasuredMode MeasureMode(
        IReadOnlyList<Frame> frames,
        Dictionary<string, IFrameSamples> samples,
        Inventory inventory,
        CharacterisationOptions options,
        StageProgress stages,
        FindingsLog log
    )
    {
        ColourMosaic mosaic = ColourMosaic.Of(frames.Select(f => f.ColourFilter).FirstOrDefault(c => c is not null));
        HashSet<Frame> members = [.. frames];
        FrameSet[] sets =
        [
            .. inventory.Sets.Where(s =>
                s.Frames.Any(members.Contains) && s.Width == frames[0].Width && s.Height == frames[0].Height
            ),
        ];
        stages.Stage("first look");
        ModeFrames mode = FrameScreening.Screen(
            frames,
            [.. frames.Select(f => samples[f.Name])],
            sets,
            mosaic,
            stages,
            log
        );
        stages.Stage("bias");
        BiasResult bias = BiasRecipe.Measure(mode, stages, log);
        stages.Stage("flats");
        FlatResult flats = FlatRecipe.Measure(mode, bias, stages, log);
        GainClaim.Report(frames, flats.Gain, mode.CodeStep.Step, log);
        DefectClass[]? response = PatternRecipe.Response(mode, bias, flats, options);
        stages.Stage("rows and columns");
        StructureResult structure = StructureRecipe.Measure(mode, bias, flats, log);
        // frees a map of the whole sensor that is not needed from here on
        flats = flats with { Mean = null };
        long pixels = (long)frames[0].Width * frames[0].Height;
        MapMemory.Release(pixels);
        ModeFrames asRead = mode;
        if (options.Temperatures == TemperatureSource.HotPixels)
        {
            stages.Stage("temperatures from hot pixels");
            mode = HotPixelTemperatures.Replace(mode, bias, flats, response, structure.Lines, options, stages, log);
        }
        stages.Stage("darks");
        DarkResult darks = DarkRecipe.Measure(mode, bias, flats, options, stages, log);
        stages.Stage("treatment of the raw data");
        bool suppressed = TreatmentFindings.Report(mode, bias, flats, darks, stages, log);
        MapMemory.Release(pixels);
        stages.Stage("levels of the darks");
        PreparedPattern? prepared = PatternRecipe.Prepare(
            mode,
            bias,
            flats,
            structure.Lines,
            darks,
            options,
            predict: true,
            stages,
            log
        );
        stages.Stage("noise of every pixel");
        bias = NoiseSpread.Take(mode, bias, flats);
        prepared = prepared?.With(bias.Moments);
        MapMemory.Release(pixels);
        stages.Stage("dark rate of every pixel");
        PatternResult? pattern = prepared is null
            ? null
            : PatternRecipe.Measure(prepared, response, mode.BytesPerFrame, stages, log);
        MapMemory.Release(pixels);
        stages.Stage("black level");
        BlackLevelProfile? level = BlackLevelRecipe.Measure(mode, bias, flats, darks, log);
        MaskedBorderProfile? border = MaskedBorderRecipe.Measure(mode, flats, stages, log);
        PatternResult? inAdu = darks.ProfileAdu is null
            ? null
            : PatternRecipe.InAdu(mode, bias, structure.Lines, darks, options, stages);
        ModeProfile profile = ModeSummary.Summarise(mode, bias, flats, darks, pattern, level, border, structure) with
        {
            HotPixelsAdu = PatternRecipe.HotPixels(inAdu),
        };
        return new(
            asRead,
            Finite(suppressed ? WithoutHotPixels(profile) : profile, log),
            ModeSummary.Maps(mode, bias, flats, pattern, inAdu)
        );
    }

    private static ModeProfile Finite(ModeProfile profile, FindingsLog log)
    {
        (profile, IReadOnlyList<string> emptied) = FiniteMode.RemoveNonFinite(profile);
        if (emptied.Count > 0)
            log.Add(
                FindingCodes.QuantityNotFinite,
                Severity.Refusal,
                $"No finite number comes out of these pixels for {Counted.Some([.. emptied], 6)}, so each was left "
                    + "empty: such frames hold values that no sensor gives (columns stuck at one code, scrambled codes, "
                    + "shifted rows); look at them before you trust the rest."
            );
        return profile;
    }

    // Where the camera removes hot pixels from its frames, nothing is known of what rests on hot pixels alone.
    private static ModeProfile WithoutHotPixels(ModeProfile profile) =>
        profile with
        {
            HotPixelsAdu = null,
            DarkCurrent = profile.DarkCurrent is not { } dark
                ? null
                : dark with
                {
                    Points = [.. dark.Points.Select(p => p with { MeanRate = null })],
                },
            FixedPattern = profile.FixedPattern is not { } pattern
                ? null
                : pattern with
                {
                    HotPixelCurve = [],
                    HotPixelCurves = [],
                },
        };

    private static bool IsMeasured(Frame frame) =>
        frame.Kind is FrameKind.Bias or FrameKind.Dark or FrameKind.DarkFlat or FrameKind.Flat;

    private static void ReportUnused(IReadOnlyList<Frame> frames, FindingsLog log)
    {
        string[] lights = [.. frames.Where(f => f.Kind == FrameKind.Light).Select(f => f.Name)];
        if (lights.Length > 0)
            log.Add(
                FindingCodes.KindNotMeasured,
                Severity.Note,
                $"{lights.Length} light frames were not measured: a profile is made from bias, dark and flat "
                    + "frames.",
                lights
            );
        string[] unknown = [.. frames.Where(f => f.Kind == FrameKind.Unknown).Select(f => f.Name)];
        if (unknown.Length > 0)
            log.LeaveOut(
                FindingCodes.KindNotMeasured,
                "Frames of unknown kind were left out: give their kind in the capture table (a survey "
                    + "writes one).",
                frames
                    .Where(f => f.Kind == FrameKind.Unknown)
                    .Select(f =>
                        (f, "Neither its header nor the capture table says whether it is a bias, dark or flat frame.")
                    )
            );
    }
}
