using System.Collections;

namespace SensorProfile.Fits;

/// <summary>
/// The cards of one header in file order, without END, with look-up by keyword. Of a repeated keyword the first card
/// counts.
/// </summary>
public sealed class FitsHeader : IReadOnlyList<FitsCard>
{
    private readonly List<FitsCard> cards;
    private readonly Dictionary<string, FitsCard> byKeyword = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<FitsCard> repeated = [];

    internal FitsHeader(List<FitsCard> cards)
    {
        this.cards = cards;
        foreach (FitsCard card in cards)
        {
            if (card.Kind == FitsValueKind.Commentary)
                continue;
            if (!byKeyword.TryAdd(card.Keyword, card) && byKeyword[card.Keyword].Value != card.Value)
                repeated.Add(card);
        }
    }

    /// <summary>Number of cards.</summary>
    public int Count => cards.Count;

    /// <summary>The card at an index in the header.</summary>
    public FitsCard this[int index] => cards[index];

    /// <summary>Cards that repeat a keyword with a value different from its first card's.</summary>
    internal IReadOnlyList<FitsCard> Repeated => repeated;

    /// <summary>
    /// The first value card of a keyword (for HIERARCH cards the words after HIERARCH); null when there is none.
    /// </summary>
    internal FitsCard? Card(string keyword) => byKeyword.GetValueOrDefault(keyword);

    /// <summary>Whether the keyword has a value card.</summary>
    internal bool Contains(string keyword) => byKeyword.ContainsKey(keyword);

    /// <summary>The string of a keyword; null when it is missing or not a string.</summary>
    public string? Text(string keyword) => Card(keyword)?.Text;

    /// <summary>
    /// The number of a keyword, see <see cref="FitsCard.Number"/>; null when it is missing or not a number.
    /// </summary>
    public double? Number(string keyword) => Card(keyword)?.Number;

    /// <summary>The integer of a keyword; null when it is missing, not an integer or beyond 64 bits.</summary>
    public long? Integer(string keyword) => Card(keyword)?.Integer;

    /// <summary>The logical value of a keyword; null when it is missing or not T or F.</summary>
    internal bool? Logical(string keyword) => Card(keyword)?.Logical;

    /// <inheritdoc/>
    public IEnumerator<FitsCard> GetEnumerator() => cards.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
