namespace SensorProfile.NoiseModel;

/// <summary>Why a question was not answered.</summary>
public enum RefusalKind
{
    /// <summary>The question itself is wrong (exit code 2).</summary>
    BadArgument,

    /// <summary>The question is fair, but this profile cannot answer it (exit code 1).</summary>
    CannotTell,
}
