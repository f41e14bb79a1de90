namespace SensorProfile.Fits.Tests;

/// <summary>
/// A test that needs a program of the system, or a package of it that a trial run proves: left out aloud without it,
/// failed when CI=true.
/// </summary>
public sealed class NeedsProgramFactAttribute : FactAttribute
{
    public NeedsProgramFactAttribute(string program, string package, params string[] trial)
    {
        if (!ExternalTool.MustBeThere && !ExternalTool.Works(program, trial))
            Skip = $"{program} is not installed (Debian package {package}).";
    }
}
