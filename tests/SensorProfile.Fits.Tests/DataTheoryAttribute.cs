namespace SensorProfile.Fits.Tests;

/// <summary>A test that needs the shared test data: skipped aloud without them, failed when CI=true.</summary>
public sealed class DataTheoryAttribute : TheoryAttribute
{
    public DataTheoryAttribute()
    {
        if (TestData.Folder is null && !TestData.MustBeThere) Skip = "The shared test data are not beside this checkout; set SENSORPROFILE_TESTDATA.";
    }
}
