using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.Decisions.Tolerance;

/// <summary>How far darks may be off; null is unlimited or not known.</summary>
/// <param name="Warmer">How much warmer than the lights, °C.</param>
/// <param name="Colder">How much colder than the lights, °C.</param>
/// <param name="Longer">How much longer than the lights, s.</param>
/// <param name="Shorter">How much shorter than the lights, s.</param>
internal sealed record SideLimits(double? Warmer, double? Colder, double? Longer, double? Shorter)
{
    /// <summary>How much the exposure may differ on the tighter side, s.</summary>
    internal double? Exposure => Smaller(Longer, Shorter);

    /// <summary>The tighter of the two temperature limits, °C.</summary>
    internal double? Tighter => Smaller(Warmer, Colder);

    /// <summary>The limits that satisfy both.</summary>
    internal SideLimits And(SideLimits other) =>
        new(
            Smaller(Warmer, other.Warmer),
            Smaller(Colder, other.Colder),
            Smaller(Longer, other.Longer),
            Smaller(Shorter, other.Shorter)
        );

    internal static double? Smaller(double? a, double? b) =>
        a is null ? b
        : b is null ? a
        : Math.Min(a.Value, b.Value);
}

/// <summary>How the uncertainties of the profile spread these limits.</summary>
internal sealed record SideSpreads(
    UncertaintyDraws.Spread Warmer,
    UncertaintyDraws.Spread Colder,
    UncertaintyDraws.Spread Exposure
);

/// <summary>How far darks may be off by each cause alone, and by all.</summary>
internal sealed record MismatchLimits(SideLimits Typical, SideLimits HotPixels, SideLimits Glow, SideLimits Level)
{
    private static readonly SideLimits none = new(null, null, null, null);

    internal SideLimits All => Typical.And(HotPixels).And(Glow).And(Level);

    internal SideLimits Of(BindingCause cause) =>
        cause switch
        {
            BindingCause.Typical => Typical,
            BindingCause.HotPixels => HotPixels,
            BindingCause.Glow => Glow,
            BindingCause.Level => Level,
            _ => none,
        };

    /// <summary>The cause that limits the temperature first; null when nothing does.</summary>
    internal BindingCause? Binding =>
        All.Tighter is null ? null : CauseLoads.Mismatches.MinBy(cause => Of(cause).Tighter ?? double.PositiveInfinity);

    /// <summary>All numbers in a row, for random draws: of all causes together, then cause by cause.</summary>
    internal double?[] Row() =>
        [
            .. CauseLoads
                .Mismatches.Select(Of)
                .Prepend(All)
                .SelectMany(limits => new[] { limits.Warmer, limits.Colder, limits.Exposure }),
        ];

    /// <summary>The spreads of the numbers in such a row.</summary>
    internal static MismatchSpreads Spreads(UncertaintyDraws.Spread[] row)
    {
        SideSpreads At(int place) => new(row[3 * place], row[3 * place + 1], row[3 * place + 2]);
        return new MismatchSpreads(
            At(0),
            CauseLoads.Mismatches.Select((cause, i) => (cause, At(i + 1))).ToDictionary(p => p.cause, p => p.Item2)
        );
    }

    /// <summary>Finds the limits; each search starts where its answer is expected.</summary>
    internal static MismatchLimits Find(DarkMismatch mismatch, bool scaled, ExpectedLimits? near = null)
    {
        SideLimits Each(BindingCause cause) =>
            new(
                mismatch.Warmer(cause, scaled, near?.Warmer(cause)),
                mismatch.Colder(cause, scaled, near?.Colder(cause)),
                mismatch.Longer(cause, scaled, near?.Longer(cause)),
                mismatch.Shorter(cause, scaled, near?.Shorter(cause))
            );
        return new MismatchLimits(
            Each(BindingCause.Typical),
            Each(BindingCause.HotPixels),
            Each(BindingCause.Glow),
            Each(BindingCause.Level)
        );
    }
}

/// <summary>Spreads of all limits.</summary>
/// <param name="All">Spreads for all causes together.</param>
/// <param name="ByCause">Spreads for each cause alone.</param>
internal sealed record MismatchSpreads(SideSpreads All, IReadOnlyDictionary<BindingCause, SideSpreads> ByCause);
