using System.Globalization;
using System.Text.RegularExpressions;

namespace SensorProfile.Frames.Headers;

/// <summary>Start of the exposure from DATE-OBS and related keywords (FITS Standard 4.0, section 9).</summary>
internal static partial class StartTime
{
    private const double ModifiedJulianDayOfUnixEpoch = 40587.0;
    private const int FirstYearOfDigitalFrames = 70;

    /// <summary>
    /// DATE-OBS (or DATE-BEG, DATE-STA), or else MJD-OBS, taken as UTC; null when the header states none.
    /// </summary>
    public static DateTimeOffset? Read(KeywordValues header, List<HeaderIssue> issues)
    {
        if (header.First("DATE-OBS", "DATE-BEG", "DATE-STA") is not { } stamp)
            return WithoutDate(header, issues);
        string? time = header.First("TIME-OBS", "TIME-BEG", "UT", "UTSTART")?.Text;
        if (Parse(stamp.Text, time, out bool dateOnly) is not { } start)
        {
            issues.Add(new HeaderIssue(FindingCodes.TimeUnreadable, $"{stamp.Keyword} = '{stamp.Text}'"));
            return null;
        }
        if (dateOnly)
            issues.Add(new HeaderIssue(FindingCodes.TimeDateOnly));
        if (header.Text("TIMESYS") is { } system && !IsUtc(system))
            issues.Add(new HeaderIssue(FindingCodes.TimeNotUtc, $"TIMESYS = '{system}'"));
        else if (header.Text("DATE-LOC") is { } local && Parse(local, null, out _) == start)
            issues.Add(new HeaderIssue(FindingCodes.TimeMaybeLocal));
        return start;
    }

    /// <summary>
    /// Reads one time stamp: ISO 8601 with or without fraction, Z or offset; a date alone; or DD/MM/YY, the form before
    /// 1999.
    /// </summary>
    /// <param name="text">The time stamp.</param>
    /// <param name="timeText">Time of day from a second keyword, used when the stamp is a date alone.</param>
    /// <param name="dateOnly">True when no time of day was found: the result is the start of that day.</param>
    public static DateTimeOffset? Parse(string text, string? timeText, out bool dateOnly)
    {
        dateOnly = false;
        Match match = Stamp().Match(text.Trim());
        if (!match.Success)
            return null;
        if (DateOf(match) is not { } date)
            return null;
        string time = match.Groups["time"].Success ? match.Groups["time"].Value : timeText?.Trim() ?? "";
        if (time.Length == 0)
        {
            dateOnly = true;
            return new DateTimeOffset(date, TimeSpan.Zero);
        }
        if (TimeOf(time) is not { } sinceMidnight || OffsetOf(match.Groups["zone"].Value) is not { } offset)
            return null;
        return new DateTimeOffset(date, TimeSpan.Zero) + sinceMidnight - offset;
    }

    private static DateTimeOffset? WithoutDate(KeywordValues header, List<HeaderIssue> issues)
    {
        if (
            header.Text("MJD-OBS") is { } text
            && NumberText.TryParse(text, out double day, out _)
            && day is > 0 and < 100000
        )
            return DateTimeOffset.UnixEpoch.AddTicks(
                (long)Math.Round((day - ModifiedJulianDayOfUnixEpoch) * 86400e3) * TimeSpan.TicksPerMillisecond
            );
        issues.Add(
            new HeaderIssue(header.Text("DATE-LOC") is null ? FindingCodes.TimeMissing : FindingCodes.TimeLocalOnly)
        );
        return null;
    }

    private static DateTime? DateOf(Match match)
    {
        bool old = match.Groups["oldyear"].Success;
        int year = Whole(match, old ? "oldyear" : "year");
        // the standard says 19YY, but programs kept writing the old form after 1999
        if (old)
            year += year < FirstYearOfDigitalFrames ? 2000 : 1900;
        int month = Whole(match, old ? "oldmonth" : "month"),
            day = Whole(match, old ? "oldday" : "day");
        bool exists =
            year is >= 1 and <= 9999 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month);
        return exists ? new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Unspecified) : null;
    }

    private static TimeSpan? TimeOf(string text)
    {
        Match match = TimeOfDay().Match(text);
        if (!match.Success)
            return null;
        int hour = Whole(match, "hour"),
            minute = Whole(match, "minute");
        double second = match.Groups["second"].Success
            ? double.Parse(match.Groups["second"].Value.Replace(',', '.'), CultureInfo.InvariantCulture)
            : 0;
        if (hour > 23 || minute > 59 || second >= 61)
            return null; // 60.x is a leap second
        return new TimeSpan(hour, minute, 0) + TimeSpan.FromTicks((long)Math.Round(second * TimeSpan.TicksPerSecond));
    }

    private static TimeSpan? OffsetOf(string zone)
    {
        if (zone.Length <= 1)
            return TimeSpan.Zero; // none, or Z
        string digits = zone[1..].Replace(":", "", StringComparison.Ordinal).PadRight(4, '0');
        int hours = int.Parse(digits[..2], CultureInfo.InvariantCulture),
            minutes = int.Parse(digits[2..], CultureInfo.InvariantCulture);
        if (hours > 14 || minutes > 59)
            return null;
        TimeSpan offset = new(hours, minutes, 0);
        return zone[0] == '-' ? -offset : offset;
    }

    private static bool IsUtc(string system) =>
        system.Trim().ToUpperInvariant() is "UTC" or "UT" or "UT1" or "GMT" or "Z";

    private static int Whole(Match match, string group) =>
        int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?:(?<year>\d{4})-(?<month>\d{1,2})-(?<day>\d{1,2})|(?<oldday>\d{1,2})/(?<oldmonth>\d{1,2})/(?<oldyear>\d{2}))"
            + @"(?:[T ]\s*(?<time>\d{1,2}:[\d:.,]+)\s*(?<zone>Z|z|[+-]\d{2}(?::?\d{2})?)?)?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex Stamp();

    [GeneratedRegex(
        @"^(?<hour>\d{1,2}):(?<minute>\d{1,2})(?::(?<second>\d{1,2}(?:[.,]\d*)?))?$",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex TimeOfDay();
}
