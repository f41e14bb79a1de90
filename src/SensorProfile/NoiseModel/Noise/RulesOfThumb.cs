using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Noise;

/// <summary>Common practice that has no source, tested against the measured camera.</summary>
internal static class RulesOfThumb
{
    private const string NoSource = "(common practice, no source)";

    /// <summary>The usual number of darks in a master.</summary>
    internal const int UsualDarks = 20;

    /// <summary>The usual number of flats.</summary>
    internal static (int Low, int High) UsualFlats => (20, 30);

    /// <summary>"Dark current doubles every 5 to 7 °C."</summary>
    internal static bool DoublingIsUsual(double doubling) => doubling is >= 5 and <= 7;

    internal static string Doubling(double doubling) =>
        $"\"Dark current doubles every 5 to 7 °C\" {NoSource}: here it doubles every {Plain.Celsius(doubling)}, "
        + $"which is {(DoublingIsUsual(doubling) ? "usual" : "unusual")}.";

    /// <summary>"Darks within ±5 °C of the lights."</summary>
    internal static string FiveDegrees(double? warmer, double? colder, double uncertainty)
    {
        double tighter = Math.Min(warmer ?? double.PositiveInfinity, colder ?? double.PositiveInfinity);
        string verdict =
            Math.Abs(tighter - 5) <= 1.96 * uncertainty ? "cannot tell whether it holds here"
            : tighter >= 5 ? "good enough here"
            : "too loose here";
        string own =
            double.IsInfinity(tighter) ? "no limit was found"
            : tighter < 0.01 ? $"our own limit is less than {Plain.Celsius(0.01)}"
            : $"our own limit is {Plain.CelsiusAtMost(tighter)}";
        return $"\"Darks within ±5 °C of the lights\" {NoSource}: {verdict}; {own}.";
    }

    /// <summary>"At least 20 darks": accepted when √(1 + (N_d/N)²·M/20) − 1 ≤ p.</summary>
    internal static bool TwentyDarksSuffice(double varianceRatio, double lights, double loss) =>
        MinDarks.Loss(varianceRatio, lights, UsualDarks) <= loss;

    internal static string TwentyDarks(double varianceRatio, double lights, double loss)
    {
        double cost = MinDarks.Loss(varianceRatio, lights, UsualDarks);
        return $"\"At least 20 darks\" {NoSource}: they would cost this stack {Plain.Percent(cost)}, "
            + (TwentyDarksSuffice(varianceRatio, lights, loss) ? "within" : "more than")
            + $" the {Plain.Percent(loss)} accepted.";
    }

    /// <summary>"20 to 30 flats", "flats at half of the full well".</summary>
    internal static IEnumerable<string> OfFlats(
        FlatNoise noise,
        double electrons,
        int? unlit,
        double loss,
        double? level
    )
    {
        double twenty = noise.Loss(electrons, UsualFlats.Low, unlit),
            thirty = noise.Loss(electrons, UsualFlats.High, unlit);
        string verdict =
            twenty <= loss ? "within"
            : thirty <= loss ? "with 30 within, with 20 more than"
            : "more than";
        yield return $"\"20 to 30 flats\" {NoSource}: they would cost this stack {Plain.Percent(twenty)} to "
            + $"{Plain.Percent(thirty)}, {verdict} the {Plain.Percent(loss)} accepted.";
        if (level is double share)
            yield return $"\"Expose flats to half of the full well\" {NoSource}: here {Plain.Percent(share)} is used; the "
                + "number of flats goes down as their level goes up.";
    }

    /// <summary>"An uncooled camera reaches about 30 °C on a warm night."</summary>
    internal static string WarmNight(TypicalLaw law) =>
        $"\"An uncooled camera reaches 30 °C on a warm night\" {NoSource}: at 30 °C this one has "
        + $"{Plain.Number(law.RateAt(30) / law.RateAt(20), 2)} times the dark current of 20 °C.";

    /// <summary>"Dither."</summary>
    internal static string Dithering(int positions) =>
        positions > 1
            ? $"\"Dither\" {NoSource}: {Plain.Whole(positions)} positions divide the residual spread of typical "
                + $"pixels here by {Plain.Number(Math.Sqrt(positions))}; a hot pixel leaves 1/{Plain.Whole(positions)} of "
                + $"itself, at {Plain.Whole(positions)} times as many places."
            : $"\"Dither\" {NoSource}: one position reduces nothing; k positions divide the residual spread of "
                + "typical pixels by √k, and a hot pixel leaves 1/k of itself.";

    internal static IEnumerable<string> OfSetpoint(SensorReader reader, bool cooled)
    {
        double reference = reader.Best.PixelReference;
        yield return Doubling(reader.Best.Law.DoublingAt(reference));
        if (!cooled)
            yield return WarmNight(reader.Best.Law);
    }
}
