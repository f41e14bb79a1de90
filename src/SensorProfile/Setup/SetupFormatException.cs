using System.Globalization;

namespace SensorProfile.Setup;

/// <summary>A setup file that cannot be understood; says where and what to write instead.</summary>
internal sealed class SetupFormatException : IOException
{
    internal SetupFormatException(string file, long? line, string? place, string problem, Exception? inner = null)
        : base(Sentence(file, line, place, problem), inner)
    {
        File = file;
        Line = line;
        Place = place;
    }

    /// <summary>The file as it was given.</summary>
    public string File { get; }

    /// <summary>Line in the file, counted from 1; null when it is not known.</summary>
    public long? Line { get; }

    /// <summary>The field at fault, for example <c>stack.lights</c>; null for the whole file.</summary>
    public string? Place { get; }

    private static string Sentence(string file, long? line, string? place, string problem)
    {
        string at = line is { } number ? ", line " + number.ToString(CultureInfo.InvariantCulture) : "";
        return $"{file}{at}{(place is null ? "" : ", " + place)}: {problem}";
    }
}
