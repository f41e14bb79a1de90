using System.Globalization;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Years;

/// <summary>How long darks taken now will last, in words.</summary>
internal static class LibraryWords
{
    public static string Phrase(LibraryForecast forecast)
    {
        string what =
            $"a stack of {Plain.Whole(forecast.Lights)} lights of {Plain.Seconds(forecast.ExposureSeconds)} more than the "
            + $"{Plain.Percent(forecast.Loss)} allowed";
        if (forecast.DateUtc is { } best)
        {
            string band = forecast.EarliestUtc is { } early
                ? $" (95 %: {Month(early)} to {(forecast.LatestUtc is { } late ? Month(late) : "open end")})"
                : "";
            return $"If the trend continues, darks taken now cost {what} from {Month(best)} on{band}; {Limit(forecast.Cause)}.";
        }
        return forecast.EarliestUtc is { } soonest
            ? "No date can be given: the dark current does not rise beyond its errors. At the steepest slope "
                + $"within them, darks taken now would cost {what} from {Month(soonest)} on."
            : $"Within 100 years the trend does not make darks taken now cost {what}.";
    }

    private static string Limit(LibraryLimit? cause) =>
        cause switch
        {
            LibraryLimit.HotPixels => "brightening hot pixels set the limit",
            LibraryLimit.NewHotPixels => "new hot pixels, missing from old darks, set the limit",
            LibraryLimit.Typical => "the ordinary pixels set the limit",
            LibraryLimit.Glow => "the glow sets the limit",
            _ => "the level of the background sets the limit",
        };

    private static string Month(DateTimeOffset date) =>
        date.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);
}
