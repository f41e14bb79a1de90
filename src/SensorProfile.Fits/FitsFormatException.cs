namespace SensorProfile.Fits;

/// <summary>
/// A file, or part of one, violates the FITS standard, or holds something that this reader must refuse.
/// </summary>
/// <remarks>The message reads <c>place: problem. Remedy.</c></remarks>
public sealed class FitsFormatException : IOException
{
    /// <summary>Makes the exception and its message.</summary>
    /// <param name="location">Where it was found.</param>
    /// <param name="problem">What was expected and what was found, one sentence with its full stop.</param>
    /// <param name="remedy">What the user can do, one sentence with its full stop.</param>
    /// <param name="innerException">The cause, if there is one.</param>
    public FitsFormatException(FitsLocation location, string problem, string remedy, Exception? innerException = null)
        : base($"{location}: {problem} {remedy}", innerException)
    {
        ArgumentNullException.ThrowIfNull(location);
        (Location, Problem, Remedy) = (location, problem, remedy);
    }

    /// <summary>
    /// The message without the file name, for a list that already names it: <c>HDU 0, byte 560: problem. Remedy.</c>
    /// </summary>
    public string Statement =>
        Location.WithinFile is { Length: > 0 } place
            ? $"{place}: {Problem} {Remedy}"
            : $"{char.ToUpperInvariant(Problem[0])}{Problem[1..]} {Remedy}";

    /// <summary>Where it was found.</summary>
    public FitsLocation Location { get; }

    /// <summary>What was expected and what was found.</summary>
    public string Problem { get; }

    /// <summary>What the user can do.</summary>
    public string Remedy { get; }
}
