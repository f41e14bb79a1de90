using System.Globalization;

namespace SensorProfile.Tests.Frames;

/// <summary>Runs a test class under a culture: what is read and written must not depend on it.</summary>
public abstract class InCulture : IDisposable
{
    private readonly CultureInfo before = CultureInfo.CurrentCulture;

    protected InCulture(string culture) => CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);

    public void Dispose()
    {
        CultureInfo.CurrentCulture = before;
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) { }
}
