namespace SensorProfile.Fits.Tests;

/// <summary>A test that needs a program: skipped aloud without it, failed when CI=true.</summary>
public sealed class NeedsProgramFactAttribute : FactAttribute
{
    public NeedsProgramFactAttribute(string program, string package)
    {
        if (!ExternalTool.MustBeThere && !ExternalTool.Exists(program)) Skip = $"{program} is not installed (Debian package {package}).";
    }
}
