namespace SensorProfile.Raw;

/// <summary>The curve from stored codes to linear ones (DNG LinearizationTable).</summary>
/// <remarks>
/// Samples are returned as stored. <see cref="Apply"/> makes them proportional to light, but the noise of such codes is
/// no longer that of the converter: some codes were merged, others left empty.
/// </remarks>
public sealed class RawLinearisation
{
    private readonly ushort[] table;

    internal RawLinearisation(ushort[] table) => this.table = table;

    /// <summary>Linear code of every stored code; stored codes beyond the end map to the last one.</summary>
    public IReadOnlyList<ushort> Table => table;

    /// <summary>
    /// The largest step between the linear codes of neighbouring stored codes: the coarseness of the codes in bright
    /// light.
    /// </summary>
    public int LargestStep => table.Zip(table.Skip(1), (a, b) => Math.Abs(b - a)).DefaultIfEmpty(0).Max();

    /// <summary>Replaces stored codes by linear ones.</summary>
    /// <param name="samples">Any number of samples.</param>
    public void Apply(Span<ushort> samples)
    {
        int last = table.Length - 1;
        foreach (ref ushort sample in samples)
            sample = table[Math.Min(sample, last)];
    }
}
