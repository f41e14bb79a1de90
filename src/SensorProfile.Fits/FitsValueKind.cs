namespace SensorProfile.Fits;

/// <summary>Type of the value of a header card.</summary>
public enum FitsValueKind
{
    /// <summary>No value: COMMENT, HISTORY, blank and END cards.</summary>
    Commentary,

    /// <summary>A value card without a value.</summary>
    Undefined,

    /// <summary>A character string.</summary>
    Text,

    /// <summary>T or F.</summary>
    Logical,

    /// <summary>An integer, possibly beyond 64 bits.</summary>
    Integer,

    /// <summary>A real number.</summary>
    Real,

    /// <summary>A complex number.</summary>
    Complex,

    /// <summary>Anything else.</summary>
    Malformed,
}
