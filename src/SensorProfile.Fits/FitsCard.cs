using System.Globalization;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

/// <summary>
/// One header card: keyword, value, comment. A long string over several CONTINUE records is one card.
/// </summary>
public sealed partial class FitsCard
{
    internal FitsCard(string keyword, FitsValueKind kind, string value, string? comment) =>
        (Keyword, Kind, Value, Comment) = (keyword, kind, value, comment);

    /// <summary>
    /// Keyword in capitals, without padding; for HIERARCH cards the words after HIERARCH, separated by single blanks;
    /// empty for a blank keyword.
    /// </summary>
    public string Keyword { get; }

    /// <summary>Type of the value.</summary>
    public FitsValueKind Kind { get; }

    /// <summary>
    /// The value: for a string the text between the quotes without trailing blanks; for a commentary card its text;
    /// otherwise the literal as written.
    /// </summary>
    public string Value { get; }

    /// <summary>The comment after the slash; null when there is none.</summary>
    public string? Comment { get; }

    /// <summary>Offset of the card in the file; null for a card that was not read from a file.</summary>
    public long? ByteOffset { get; internal init; }

    /// <summary>The 80-byte records as stored in the file; empty for a card that was not read from a file.</summary>
    internal ReadOnlyMemory<byte> Records { get; init; }

    /// <summary>The string; null when the value is not a string.</summary>
    public string? Text => Kind == FitsValueKind.Text ? Value : null;

    /// <summary>The logical value; null when the value is not T or F.</summary>
    public bool? Logical => Kind == FitsValueKind.Logical ? Value == "T" : null;

    /// <summary>The integer; null when the value is not an integer or does not fit into 64 bits.</summary>
    public long? Integer =>
        Kind == FitsValueKind.Integer
        && long.TryParse(Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long integer)
            ? integer
            : null;

    /// <summary>
    /// The number: an integer or real, with decimal point or comma, even in quotes; null for everything else.
    /// </summary>
    public double? Number =>
        Kind switch
        {
            FitsValueKind.Integer or FitsValueKind.Real => CardNumber.Parse(Value),
            FitsValueKind.Text => CardNumber.Parse(Value.AsSpan().Trim()),
            _ => null,
        };

    /// <summary>
    /// Whether the value is a number with a decimal comma, which the standard does not allow but <see cref="Number"/>
    /// accepts.
    /// </summary>
    public bool HasDecimalComma =>
        Kind is FitsValueKind.Real or FitsValueKind.Text
        && CardNumber.FormOf(Value.AsSpan().Trim()) == NumberForm.RealWithComma;

    /// <summary>Keyword, value and comment on one line.</summary>
    public override string ToString() =>
        Kind switch
        {
            FitsValueKind.Commentary => $"{Keyword} {Value}".TrimEnd(),
            FitsValueKind.Text => $"{Keyword} = '{Value}'" + (Comment is null ? "" : $" / {Comment}"),
            _ => $"{Keyword} = {Value}" + (Comment is null ? "" : $" / {Comment}"),
        };
}
