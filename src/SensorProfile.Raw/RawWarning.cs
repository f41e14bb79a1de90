namespace SensorProfile.Raw;

/// <summary>Something odd in a file that can be read all the same.</summary>
/// <param name="Code">Stable name of the oddity, for example <c>no-exposure</c>; see
/// <see cref="RawWarningCodes"/>.</param>
/// <param name="Location">Where it was found.</param>
/// <param name="Message">What was found and what was made of it, one plain sentence.</param>
public sealed record RawWarning(string Code, RawLocation Location, string Message)
{
    /// <summary>Place and sentence.</summary>
    public override string ToString() => $"{Location}: {Message}";
}

/// <summary>The codes of <see cref="RawWarning"/>.</summary>
internal static class RawWarningCodes
{
    /// <summary>A tag that is not needed for the samples holds something impossible and was passed over.</summary>
    public const string MeaninglessTag = "meaningless-tag";

    /// <summary>A directory that is not needed for the samples cannot be read and was passed over.</summary>
    public const string BrokenDirectory = "broken-directory";

    /// <summary>The maker's notes cannot be read: what only they say is unknown.</summary>
    public const string BrokenMakerNotes = "broken-maker-notes";

    /// <summary>The file holds several mosaics of full resolution; the largest was taken.</summary>
    public const string SeveralMosaics = "several-mosaics";

    /// <summary>
    /// The camera stored codes that are not proportional to light; see <see cref="RawLinearisation"/>.
    /// </summary>
    public const string CurvedCodes = "curved-codes";
}
