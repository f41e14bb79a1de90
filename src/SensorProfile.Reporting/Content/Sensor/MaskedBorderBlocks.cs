using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>What the masked pixels show, compared with those that see light.</summary>
internal static class MaskedBorderBlocks
{
    private const double Sigmas = 4;

    /// <summary>The blocks.</summary>
    public static IEnumerable<Block> Compose(MaskedBorderProfile border, ModeProfile mode)
    {
        yield return new SubheadingBlock("Masked border");
        yield return new TextBlock(Sentence(border));
        (string Name, Measurement? Border, Measurement? Pixels)[] rows =
        [
            ("Level without exposure", border.Level, mode.BiasLevel),
            ("Read noise", border.ReadNoiseAdu, mode.ReadNoiseAdu),
            ("Row noise", border.RowNoiseAdu, InAdu(mode.FixedPattern?.RowNoise, mode.Gain)),
        ];
        yield return new TableBlock(
            ["ADU", "Masked border", "Pixels that see light"],
            [.. rows.Select(r => (IReadOnlyList<string>)[r.Name, Number(r.Border), Number(r.Pixels)])],
            [0.4, 0.3, 0.3]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 2,
        };
    }

    private static string Sentence(MaskedBorderProfile border)
    {
        string place = FormattableString.Invariant($"{border.Pixels} pixels under the mask see no light. ");
        MaskedBorderSet[] judged = [.. border.Sets.Where(s => s.Shift is not null)];
        if (judged.Length == 0)
            return place + "Whether their level moves in the darks cannot be told without a gain and pairs of darks.";
        MaskedBorderSet[] moved =
        [
            .. judged.Where(s => Math.Abs(s.Shift!.Value) > Sigmas * s.Shift.StandardUncertainty),
        ];
        if (moved.Length == 0)
            return place
                + FormattableString.Invariant(
                    $"In all {judged.Length} sets of darks their level rose as much as their own dark "
                )
                + "charge explains, so nothing else moved the level.";
        MaskedBorderSet worst = moved.MaxBy(s => Math.Abs(s.Shift!.Value))!;
        return place
            + FormattableString.Invariant($"In {moved.Length} of {judged.Length} sets of darks their level moved by ")
            + $"more than their own dark charge explains, most by {QuantityText.Of(worst.Shift)}.";
    }

    private static string Number(Measurement? value) =>
        value is null ? "cannot tell" : QuantityText.Number(value.Value, value.StandardUncertainty);

    private static Measurement? InAdu(Measurement? noise, Measurement? gain) =>
        noise is null || noise.Unit == "ADU" ? noise
        : gain is null ? null
        : noise with
        {
            Value = noise.Value / gain.Value,
            StandardUncertainty = noise.StandardUncertainty / gain.Value,
            Unit = "ADU",
        };
}
