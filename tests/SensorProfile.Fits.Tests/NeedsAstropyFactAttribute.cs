namespace SensorProfile.Fits.Tests;

/// <summary>A test that needs astropy in the system's Python: skipped aloud without it, failed when CI=true.</summary>
public sealed class NeedsAstropyFactAttribute : FactAttribute
{
    public const string Python = "/usr/bin/python3";

    public NeedsAstropyFactAttribute()
    {
        if (ExternalTool.MustBeThere) return;
        if (!File.Exists(Python) || ExternalTool.Run(Python, "-c", "import astropy").ExitCode != 0) Skip = "astropy is not installed (Debian package python3-astropy).";
    }
}
