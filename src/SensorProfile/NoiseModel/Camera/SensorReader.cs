using System.Runtime.CompilerServices;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Session;

namespace SensorProfile.NoiseModel.Camera;

/// <summary>
/// Reads a mode of a profile into a <see cref="SensorModel"/>, and draws random variants of it within its
/// uncertainties.
/// </summary>
internal sealed class SensorReader
{
    // when the profile states no threshold: five times the typical rate
    private const double HotFactorWithoutThreshold = 5;

    // standard uncertainties; a normal deviate goes farther once in 16,000 draws
    private const double Farthest = 4;

    // successive questions are mostly about the same mode: its draws are then made only once
    private static readonly ConditionalWeakTable<ModeProfile, SensorReader> known = [];

    private readonly ModeProfile mode;
    private readonly CameraInfo camera;
    private readonly TypicalLaw law;
    private readonly double reference;
    private readonly double ofLaw; // relative uncertainty of the law's rate at the reference
    private readonly SharedGain shared;
    private readonly List<(double Sky, SensorModel? Model)> draws = [];
    private Random? drawing;

    private SensorReader(CameraInfo camera, ModeProfile mode, TypicalLaw law, double reference)
    {
        (this.camera, this.mode, this.law, this.reference) = (camera, mode, law, reference);
        ofLaw = law.RelativeUncertaintyAt(reference);
        shared = SharedGain.Find(mode, ofLaw);
        DarkCurrentProfile dark = mode.DarkCurrent!;
        Range = dark.MeasuredRange is [double low, double high] ? (low, high) : (reference, reference);
        LongestExposure = dark.Points.SelectMany(p => p.Exposures).DefaultIfEmpty(0).Max();
        Best = Build(null, RemainingUncertainty.Whole) ?? throw NotAboveZero();
    }

    /// <summary>The best estimate.</summary>
    internal SensorModel Best { get; }

    /// <summary>Coldest and warmest temperature measured, °C.</summary>
    internal (double Low, double High) Range { get; }

    /// <summary>Longest dark behind the profile, s; 0 when not recorded.</summary>
    internal double LongestExposure { get; }

    /// <summary>Whether the temperature laws of single pixels were measured.</summary>
    internal bool LawsMeasured => mode.FixedPattern is { DoublingByRate.Count: > 0 };

    internal ModeProfile Mode => mode;

    internal CameraInfo Camera => camera;

    /// <summary>How the mode was read, for the findings of the answer.</summary>
    internal IReadOnlyList<Finding> Notes { get; private init; } = [];

    /// <exception cref="DecisionRefusedException">The profile lacks the read noise or the dark current.</exception>
    internal static SensorReader Of(CameraProfile profile, ModeProfile mode)
    {
        if (known.TryGetValue(mode, out SensorReader? reader) && ReferenceEquals(reader.camera, profile.Camera))
            return reader;
        reader = Read(profile, mode);
        known.AddOrUpdate(mode, reader);
        return reader;
    }

    private static SensorReader Read(CameraProfile profile, ModeProfile mode)
    {
        bool pooled = ChannelMean.IsNeeded(mode);
        if (pooled)
            mode = ChannelMean.Average(mode);
        if (mode.ReadNoise is not { Value: > 0 })
            throw Refuse.CannotTell(
                FindingCodes.ReadNoiseMissing,
                // with a read noise in ADU only the gain is lacking
                $"The profile has no read noise in electrons: add {(mode.ReadNoiseAdu is null ? "bias frames and " : "")}flat "
                    + "pairs and characterise again."
            );
        DarkCurrentModel? model = mode.DarkCurrent?.Models.FirstOrDefault(m => m.Name == mode.DarkCurrent.Selected);
        if (model is null)
            throw Refuse.CannotTell(
                FindingCodes.DarkCurrentMissing,
                mode.DarkNights.Count > 0
                    ? "The profile has no dark current against temperature, because its darks have no temperature: fill "
                        + "column temperature_c of the capture table for some of them, at three temperatures or more, and "
                        + "characterise again; a thermometer beside the camera is good enough."
                    : "The profile has no dark current against temperature: add darks of three exposures at three "
                        + "temperatures and characterise again."
            );
        double reference = mode.DarkCurrent!.ReferenceTemperature
            ?? throw Refuse.CannotTell(
                FindingCodes.DarkCurrentMissing,
                "The profile states no reference temperature for its dark current: characterise again with this version."
            );
        return new SensorReader(
            profile.Camera,
            mode,
            TypicalLaw.From(model, reference) ?? throw NotAboveZero(),
            reference
        )
        {
            Notes = [.. NotesOf(mode, pooled)],
        };
    }

    private static IEnumerable<Finding> NotesOf(ModeProfile mode, bool pooled)
    {
        if (pooled)
            yield return ChannelMean.Note;
        if (mode.DarkCurrent?.CarriedFrom is { } other)
            yield return new Finding(
                FindingCodes.DarkCurrentCarried,
                Severity.Note,
                $"Dark current and hot pixels were measured at {ModeLabel.Text(other)} and carried over in electrons; their "
                    + "uncertainty allows for it."
            );
    }

    private static DecisionRefusedException NotAboveZero() =>
        Refuse.CannotTell(
            FindingCodes.DarkCurrentNotSeen,
            "The dark current of this profile is not above zero at its reference temperature: add longer or "
                + "warmer darks and characterise again."
        );

    /// <summary>How far a sensor temperature lies outside the measured range, °C; below 0 inside it.</summary>
    internal double Outside(double celsius) => Math.Max(Range.Low - celsius, celsius - Range.High);

    /// <summary>A random variant within the standard uncertainties; null when its law is unphysical.</summary>
    /// <param name="random">Source of the draws; it advances equally far whatever <paramref name="left"/> is.</param>
    /// <param name="left">Remaining share of each uncertainty.</param>
    internal SensorModel? Draw(Random random, RemainingUncertainty left) => Build(random, left);

    /// <summary>
    /// Draws of sky and camera at full uncertainty, in the order given by one seed: they are the same for every
    /// question, so they are made only once.
    /// </summary>
    /// <param name="count">Number of draws.</param>
    /// <param name="seed">Seed of the draws; always the same.</param>
    internal IReadOnlyList<(double Sky, SensorModel? Model)> Draws(int count, int seed)
    {
        lock (draws)
        {
            drawing ??= new Random(seed);
            while (draws.Count < count)
                draws.Add((Deviate(drawing), Draw(drawing, RemainingUncertainty.Whole)));
            return draws.Count == count ? [.. draws] : draws.GetRange(0, count);
        }
    }

    private SensorModel? Build(Random? random, RemainingUncertainty left)
    {
        double Moved(Measurement m, double share) => MovedBy(m, random is null ? 0 : Deviate(random) * share);
        double ownRead = random is null ? 0 : Deviate(random),
            ownGain = random is null || mode.Gain is null ? 0 : Deviate(random);
        double[] moves = random is null ? [] : law.Deviates(() => Deviate(random));
        (double ofGain, double ofRead) = shared.Deviates(OfRate(moves), ownGain, ownRead);
        double read = Math.Max(MovedBy(mode.ReadNoise!, ofRead * left.Bias), 0);
        double gain = mode.Gain is { } g ? Math.Max(MovedBy(g, ofGain * left.Flats), 0) : 0;
        TypicalLaw drawn = random is null ? law : law.Moved([.. moves.Select(move => move * left.Darks)]);
        double pixelReference = mode.FixedPattern?.ReferenceTemperature ?? reference;
        if (!(drawn.ThermalAt(pixelReference) > 0))
            return null;
        double step = Math.Max(camera.CodeStep, 1) * gain;
        double typicalDoubling = drawn.ThermalDoublingAt(pixelReference);
        if (!(typicalDoubling > 0))
            return null;
        double typicalRate = drawn.RateAt(pixelReference),
            hotAbove = HotAbove(typicalRate);
        var laws = new PixelLaws(
            typicalDoubling,
            LawsMeasured ? PixelLaws.Representative(mode.FixedPattern!, hotAbove)
                : mode.FixedPattern is null ? []
                : [PixelLaws.Unmeasured(typicalDoubling, hotAbove)],
            random is null ? 0 : Deviate(random) * left.Darks
        );
        RateDistribution? rates = mode.FixedPattern is { } pattern
            ? RateDistribution.From(
                pattern,
                Math.Max((long)camera.Width * camera.Height, 1),
                random is null ? 0 : Deviate(random),
                left.Darks
            )
            : null;
        GlowSource? glow = Glow(pixelReference, m => Moved(m, left.Darks));
        double statedPeak = Strongest(mode.FixedPattern)?.Peak!.Value ?? 0;
        return new SensorModel
        {
            ReadVariance = read * read,
            QuantisationVariance = step * step / 12,
            Gain = gain,
            PixelCount = Math.Max((double)camera.Width * camera.Height, 1),
            Flicker =
            [
                .. (mode.FixedPattern?.Flicker ?? []).Select(f =>
                    f with
                    {
                        Deviation = f.Deviation with { Value = Math.Max(Moved(f.Deviation, left.Darks), 0) },
                    }
                ),
            ],
            FullWell = (
                mode.FullWell is { Value: > 0 } well
                    ? [well]
                    : mode.Channels.Select(c => c.FullWell).OfType<Measurement>().Where(w => w.Value > 0)
            )
                .Select(w => w.Value)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min(),
            Law = drawn,
            PixelReference = pixelReference,
            Rates = rates,
            Laws = laws,
            HotAbove = hotAbove,
            Bend = law.Floor == 0 ? mode.FixedPattern?.HotLawBend : null,
            Glow = glow,
            GlowParts = glow is null
                ? null
                : new GlowParts(
                    mode.FixedPattern!.GlowClasses,
                    glow.PeakAtReference / statedPeak,
                    Math.Max(hotAbove - typicalRate, 0),
                    Math.Max((double)camera.Width * camera.Height, 1)
                ),
        };
    }

    private static double MovedBy(Measurement quantity, double deviate) =>
        quantity.Value + deviate * quantity.StandardUncertainty;

    /// <summary>How far a draw of the law moves the rate at the reference, in its standard uncertainties.</summary>
    private double OfRate(double[] moves)
    {
        if (moves.Length == 0 || !(ofLaw > 0))
            return 0;
        double ratio = law.Moved(moves).RateAt(reference) / law.RateAt(reference);
        return ratio > 0 ? Math.Clamp(Math.Log(ratio) / ofLaw, -Farthest, Farthest) : -Farthest;
    }

    private double HotAbove(double typical) =>
        mode.FixedPattern?.Thresholds is { HotRate: > 0 } thresholds
            ? typical + thresholds.HotRate
            : HotFactorWithoutThreshold * typical;

    private static GlowRegion? Strongest(FixedPatternProfile? pattern) =>
        pattern?.Glow.Where(g => g.Peak is { Value: > 0 }).MaxBy(g => g.Peak!.Value);

    private GlowSource? Glow(double pixelReference, Func<Measurement, double> moved)
    {
        if (Strongest(mode.FixedPattern) is not { } strongest)
            return null;
        double peak = Math.Max(moved(strongest.Peak!), 0);
        double? slope = GlowSource.Law(strongest) is { } own
            ? moved(new Measurement(own.Slope, own.Uncertainty, "1/°C", 1, "glow against temperature"))
            : null;
        return new GlowSource(
            strongest.Where,
            peak,
            pixelReference,
            slope,
            strongest.ExposureExponent is { Value: > 0 } p ? Math.Max(moved(p), 0) : 1,
            Math.Max(LongestExposure, 1)
        );
    }

    /// <summary>A standard normal deviate (Box and Muller 1958).</summary>
    internal static double Deviate(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
