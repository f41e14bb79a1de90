namespace SensorProfile.Fits;

/// <summary>Something odd in a file that can be read all the same.</summary>
/// <param name="Code">Stable name of the oddity, for example <c>missing-padding</c>; see
/// <see cref="FitsWarningCodes"/>.</param>
/// <param name="Location">Where it was found.</param>
/// <param name="Message">What was found and what was made of it, one plain sentence.</param>
public sealed record FitsWarning(string Code, FitsLocation Location, string Message)
{
    /// <summary>Place and sentence.</summary>
    public override string ToString() => $"{Location}: {Message}";
}
