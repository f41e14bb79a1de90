using System.Text.Json.Serialization;

namespace SensorProfile;

/// <summary>Something the user should know about their frames or about an answer.</summary>
/// <param name="Code">Stable kebab-case code, for example <c>temperature-missing</c>; scripts may rely on it.</param>
/// <param name="Severity">How much it weighs.</param>
/// <param name="Message">One plain sentence: what was found, what follows, and what to do about it.</param>
/// <param name="Frames">The files it is about; empty when it is about the whole answer.</param>
[method: JsonConstructor]
public sealed record Finding(string Code, Severity Severity, string Message, IReadOnlyList<string> Frames)
{
    /// <summary>A finding about the answer as a whole, not about single frames.</summary>
    public Finding(string code, Severity severity, string message)
        : this(code, severity, message, []) { }
}
