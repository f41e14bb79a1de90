using System.Globalization;

namespace SensorProfile.Profiles.Files;

/// <summary>A file that was meant to be a profile but is not one that this program can read.</summary>
public sealed class ProfileFormatException : IOException
{
    internal ProfileFormatException(
        string file,
        string? place,
        long? line,
        string problem,
        string remedy,
        Exception? inner = null
    )
        : base(Sentence(file, place, line, problem, remedy), inner)
    {
        File = file;
        Place = place;
        Line = line;
        Problem = problem;
        Remedy = remedy;
    }

    /// <summary>The file as it was given.</summary>
    public string File { get; }

    /// <summary>
    /// Place in the document, for example <c>$.modes[0].readNoise.value</c>; null when it is not valid JSON or the file
    /// as a whole is at fault.
    /// </summary>
    public string? Place { get; }

    /// <summary>Line in the file, counted from 1; null when it is not known.</summary>
    public long? Line { get; }

    /// <summary>What was found.</summary>
    public string Problem { get; }

    /// <summary>What to do about it.</summary>
    public string Remedy { get; }

    private static string Sentence(string file, string? place, long? line, string problem, string remedy)
    {
        string at = line is { } number ? ", line " + number.ToString(CultureInfo.InvariantCulture) : "";
        return $"{file}{at}{(place is null ? "" : ", " + place)}: {problem} {remedy}";
    }
}
