namespace SensorProfile.Raw;

/// <summary>An oddity in a file that can still be read.</summary>
/// <param name="Code">Stable code of the oddity, for example <c>no-exposure</c>; see
/// <see cref="RawWarningCodes"/>.</param>
/// <param name="Location">Where it was found.</param>
/// <param name="Message">What was found and how it was handled, one plain sentence.</param>
public sealed record RawWarning(string Code, RawLocation Location, string Message)
{
    /// <summary>Place and sentence.</summary>
    public override string ToString() => $"{Location}: {Message}";
}

/// <summary>The codes of <see cref="RawWarning"/>.</summary>
internal static class RawWarningCodes
{
    /// <summary>A tag that the samples do not depend on is invalid and was ignored.</summary>
    public const string MeaninglessTag = "meaningless-tag";

    /// <summary>A directory that the samples do not depend on cannot be read and was ignored.</summary>
    public const string BrokenDirectory = "broken-directory";

    /// <summary>The maker's notes cannot be read: what only they state is unknown.</summary>
    public const string BrokenMakerNotes = "broken-maker-notes";

    /// <summary>The file holds several full-resolution mosaics; the largest was used.</summary>
    public const string SeveralMosaics = "several-mosaics";

    /// <summary>
    /// The camera stored codes that are not proportional to light; see <see cref="RawLinearisation"/>.
    /// </summary>
    public const string CurvedCodes = "curved-codes";
}
