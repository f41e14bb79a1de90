namespace SensorProfile.Raw.LibRaw;

/// <summary>Why LibRaw cannot read a file.</summary>
internal enum LibRawCause
{
    /// <summary>Anything else: an unsupported layout, or a limit.</summary>
    Other,

    /// <summary>No usable LibRaw is installed.</summary>
    Missing,

    /// <summary>The file is damaged.</summary>
    Damaged,

    /// <summary>LibRaw does not recognise it: damage, or a camera newer than LibRaw.</summary>
    Unknown,

    /// <summary>A filter that is not 2 × 2 pixels.</summary>
    Filter,

    /// <summary>Every pixel holds several colours.</summary>
    Demosaiced,
}

/// <summary>Thrown when LibRaw cannot read a file.</summary>
/// <param name="problem">The reason, without a full stop.</param>
/// <param name="cause">Category of the reason.</param>
internal sealed class LibRawFailure(string problem, LibRawCause cause = LibRawCause.Other) : Exception(problem)
{
    /// <summary>Category of the reason.</summary>
    public LibRawCause Cause { get; } = cause;
}
