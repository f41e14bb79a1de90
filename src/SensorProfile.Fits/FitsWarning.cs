namespace SensorProfile.Fits;

/// <summary>An oddity in a file that can still be read.</summary>
/// <param name="Code">Stable code of the oddity, for example <c>missing-padding</c>; see
/// <see cref="FitsWarningCodes"/>.</param>
/// <param name="Location">Where it was found.</param>
/// <param name="Message">What was found and how it was handled, one plain sentence.</param>
public sealed record FitsWarning(string Code, FitsLocation Location, string Message)
{
    /// <summary>Place and sentence.</summary>
    public override string ToString() => $"{Location}: {Message}";
}
