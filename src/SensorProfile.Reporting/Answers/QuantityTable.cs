using SensorProfile.Reporting.Answers.Nights;

namespace SensorProfile.Reporting.Answers;

/// <summary>The numbers of an answer as a table: label, number, unit, and its interval or method.</summary>
internal static class QuantityTable
{
    private const int DigitsWithoutUncertainty = 3;

    /// <summary>The numbers under the title of their answer.</summary>
    /// <param name="reply">The answer.</param>
    /// <param name="quantities">Its numbers, or the first of them.</param>
    /// <param name="methods">Whether the method is shown for a number without an interval.</param>
    public static AnswerTable Of(AnswerDocument reply, IEnumerable<AnswerQuantity> quantities, bool methods = true) =>
        new(reply.QuantitiesTitle, ["", ">", "", ""], [.. quantities.Select(q => Row(q, methods))]);

    private static IReadOnlyList<string> Row(AnswerQuantity quantity, bool methods)
    {
        if (quantity.Value is not { } value)
            return [quantity.Label, quantity.Absent, "", ""];
        double scale = ReadableTime.Scale(value);
        string interval =
            quantity.Interval is { } ends ? $"95 %: {End(ends.Low / scale)} … {End(ends.High / scale)}"
            : methods ? value.Method
            : "";
        if (AddedNoise.Is(quantity.Name))
            return [quantity.Label, AddedNoise.Of(value.Value)[..^2], "%", interval];
        Measurement readable = ReadableTime.Of(value);
        return [quantity.Label, Number(readable), QuantityText.Unit(readable.Unit), interval];
    }

    /// <summary>As many digits as its uncertainty allows; a count keeps all of its own.</summary>
    private static string Number(Measurement value) =>
        value.StandardUncertainty > 0 ? QuantityText.Number(value.Value, value.StandardUncertainty)
        : double.IsInteger(value.Value) ? QuantityText.Number(value.Value, 9)
        : QuantityText.Number(value.Value, DigitsWithoutUncertainty);

    private static string End(double? value) => value is { } end ? QuantityText.Number(end, 3) : "open";
}
