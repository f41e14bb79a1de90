using System.Globalization;

namespace SensorProfile.Reporting.Tests;

/// <summary>Runs something under another culture.</summary>
internal static class InCulture
{
    public static T Run<T>(string name, Func<T> action)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
            return action();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
