namespace SensorProfile.Raw.LibRaw;

/// <summary>Why LibRaw does not read a file.</summary>
internal enum LibRawCause
{
    /// <summary>Something else: a layout that is not read here, or a limit.</summary>
    Other,

    /// <summary>There is no LibRaw to be used.</summary>
    Missing,

    /// <summary>The file is damaged.</summary>
    Damaged,

    /// <summary>LibRaw does not know what it is: damage, or a camera newer than it.</summary>
    Unknown,

    /// <summary>A filter of other than 2 × 2 pixels.</summary>
    Filter,

    /// <summary>Every pixel holds several colours.</summary>
    Demosaiced,
}

/// <summary>LibRaw cannot read a file.</summary>
/// <param name="problem">Why, without a full stop.</param>
/// <param name="cause">What kind of reason that is.</param>
internal sealed class LibRawFailure(string problem, LibRawCause cause = LibRawCause.Other) : Exception(problem)
{
    /// <summary>What kind of reason it is.</summary>
    public LibRawCause Cause { get; } = cause;
}
