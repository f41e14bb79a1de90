namespace SensorProfile.Raw.LibRaw;

/// <summary>LibRaw cannot read a file.</summary>
/// <param name="problem">Why, without a full stop.</param>
/// <param name="isDamage">Whether the file is damaged, as against one that LibRaw does not know.</param>
internal sealed class LibRawFailure(string problem, bool isDamage = false) : Exception(problem)
{
    /// <summary>Whether the file is damaged.</summary>
    public bool IsDamage { get; } = isDamage;
}
