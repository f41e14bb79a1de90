namespace SensorProfile;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; the numbers stand.</summary>
    Note,

    /// <summary>The numbers stand, but may mislead if this is ignored.</summary>
    Warning,

    /// <summary>A number that was asked for is not given because of this.</summary>
    Refusal,
}
