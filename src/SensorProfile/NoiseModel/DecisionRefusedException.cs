namespace SensorProfile.NoiseModel;

/// <summary>A question that is refused with one plain sentence, instead of being answered by a guess.</summary>
public sealed class DecisionRefusedException : Exception
{
    /// <summary>A refusal of the given kind.</summary>
    /// <param name="kind">Whether the question or the profile is at fault.</param>
    /// <param name="code">Stable kebab-case code.</param>
    /// <param name="message">One sentence: what was found, and the way out.</param>
    public DecisionRefusedException(RefusalKind kind, string code, string message)
        : base(message)
    {
        Kind = kind;
        Code = code;
    }

    /// <summary>Whether the question or the profile is at fault.</summary>
    public RefusalKind Kind { get; }

    /// <summary>Stable kebab-case code, for example <c>sky-not-positive</c>.</summary>
    public string Code { get; }

    /// <summary>The same as a finding, for answers that are printed as documents.</summary>
    public Finding ToFinding() => new(Code, Severity.Refusal, Message);
}
