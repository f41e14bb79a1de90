namespace SensorProfile.Cli;

/// <summary>Paths in commands that people copy.</summary>
internal static class Quoted
{
    public static string Of(string path) =>
        path.Any(c => char.IsWhiteSpace(c) || c is '(' or ')' or '&' or ';') ? $"\"{path}\"" : path;
}
