namespace SensorProfile.Frames.Headers;

/// <summary>Merges the issues of single headers into one sentence per cause.</summary>
internal static class HeaderFindings
{
    /// <summary>Makes the sentence for one cause from the number of frames in words and the distinct details.</summary>
    internal sealed record Rule(string Code, Severity Severity, Func<string, string, string> Sentence);

    /// <summary>
    /// In the order in which they are reported. {n} is "1 frame" or "12 frames", {d} the distinct details.
    /// </summary>
    private static readonly Rule[] Rules =
    [
        new(FindingCodes.KindMissing, Severity.Warning, (n, d) =>
            $"No frame kind (IMAGETYP) in {n}; no measurement works without it: fill in column kind of the capture table"
            + (d.Length > 0 ? $", or use the file or folder names, which say {d}." : ".")
        ),
        new(FindingCodes.KindNotUnderstood, Severity.Warning, (n, d) =>
            $"The frame kind of {n} is not understood ({d}); no measurement works without it: fill in column kind of the capture table."
        ),
        new(FindingCodes.KindFromName, Severity.Note, (n, _) =>
            $"The kind of {n} was taken from file or folder names, as asked; nothing in the headers confirms it."
        ),
        new(FindingCodes.KindContradictsName, Severity.Warning, (n, d) =>
            $"The header gives another kind than the name in {n} ({d}); the header was used. Correct column "
            + "kind of the capture table if the names are right."
        ),
        new(FindingCodes.ExposureMissing, Severity.Warning, (n, _) =>
            $"No exposure (EXPTIME or EXPOSURE) in {n}: it is unknown; fill in column exposure_s of the capture table."
        ),
        new(FindingCodes.ExposureInvalid, Severity.Warning, (n, d) =>
            $"An impossible exposure in {n} ({d}): it is taken as unknown; fill in column exposure_s of the capture table."
        ),
        new(FindingCodes.ExposureZero, Severity.Warning, (n, _) =>
            $"An exposure of 0 s in {n} that should have one: if that is wrong, correct column exposure_s of "
            + "the capture table; if they are bias frames, column kind."
        ),
        new(FindingCodes.ExposureContradicts, Severity.Warning, (n, d) =>
            $"EXPTIME and EXPOSURE contradict each other in {n} ({d}); check it and fill in column exposure_s "
            + "of the capture table if that is wrong."
        ),
        new(FindingCodes.BiasExposureLong, Severity.Warning, (n, d) =>
            $"{n} marked bias with an exposure of {d}: a bias has the shortest exposure there is; if these are "
            + "darks, correct column kind of the capture table."
        ),
        new(FindingCodes.TemperatureMissing, Severity.Warning, (n, d) =>
            $"No sensor temperature (CCD-TEMP) in {n}: it is unknown and dark current cannot be tied to a temperature"
            + (d.Length > 0 ? $" (the set temperature, {d} °C, is no reading and was not used in its place)" : "")
            + "; fill in column temperature_c of the capture table if you know it."
        ),
        new(FindingCodes.TemperatureSentinel, Severity.Warning, (n, d) =>
            $"A placeholder instead of a sensor temperature in {n} ({d}): it is taken as unknown; fill in column "
            + "temperature_c of the capture table if you know it."
        ),
        new(FindingCodes.TemperatureImpossible, Severity.Warning, (n, d) =>
            $"A sensor temperature outside \u2212100 to +80 °C in {n} ({d}; perhaps kelvin or fahrenheit): it "
            + "is taken as unknown; fill in column temperature_c of the capture table if you know it."
        ),
        new(FindingCodes.DecimalComma, Severity.Note, (n, d) =>
            $"A decimal comma in a number of {n} ({d}): it was understood; check the values, and set the "
            + "capture computer to decimal points."
        ),
        new(FindingCodes.NotANumber, Severity.Warning, (n, d) =>
            $"A word where a number belongs in {n} ({d}): the value was ignored; correct it in the capture table."
        ),
        new(FindingCodes.BinningUnreadable, Severity.Warning, (n, d) =>
            $"An invalid binning in {n} ({d}): it is taken as 1x1; correct column binning of the capture table if that is wrong."
        ),
        new(FindingCodes.TimeMissing, Severity.Note, (n, _) =>
            $"No time (DATE-OBS) in {n}: they are ordered by name, and drifts in time cannot be seen."
        ),
        new(FindingCodes.TimeUnreadable, Severity.Note, (n, d) =>
            $"A time that cannot be read in {n} ({d}): they are ordered by name, and drifts in time cannot be seen."
        ),
        new(FindingCodes.TimeDateOnly, Severity.Note, (n, _) =>
            $"A date without a time of day in {n}: within a day they are ordered by name, and drifts in time cannot be seen."
        ),
        new(FindingCodes.TimeLocalOnly, Severity.Note, (n, _) =>
            $"Only local time (DATE-LOC) in {n}: the time is taken as unknown, and they are ordered by name; "
            + "have the capture program write DATE-OBS in UTC."
        ),
        new(FindingCodes.TimeNotUtc, Severity.Note, (n, d) =>
            $"A time that is not UTC in {n} ({d}): it was used unchanged, so it may be off relative to other frames."
        ),
        new(FindingCodes.TimeMaybeLocal, Severity.Note, (n, _) =>
            $"DATE-OBS equals the local time DATE-LOC in {n}: unless the site keeps UTC, the time is local and "
            + "off by the time zone; differences between frames stay right."
        ),
        new(FindingCodes.ColourFilterUnreadable, Severity.Warning, (n, d) =>
            $"An invalid colour filter pattern in {n} ({d}): they are treated as monochrome; if the sensor "
            + "is a colour sensor, its colours are mixed in every number."
        ),
        new(FindingCodes.RowOrderUnknown, Severity.Note, (n, d) =>
            $"An unknown row order in {n} ({d}): the colour filter pattern was taken to begin at the first row of the file."
        ),
    ];

    /// <summary>One finding per code and header format, over all frames concerned.</summary>
    public static IEnumerable<Finding> Merge(IReadOnlyList<(string Name, IReadOnlyList<HeaderIssue> Issues)> frames) =>
        [.. Merge(frames, Rules, HeaderSource.Fits), .. Merge(frames, RawHeaderRules.All, HeaderSource.Raw)];

    private static IEnumerable<Finding> Merge(
        IReadOnlyList<(string Name, IReadOnlyList<HeaderIssue> Issues)> frames,
        IReadOnlyList<Rule> rules,
        HeaderSource source
    )
    {
        foreach (Rule rule in rules)
        {
            List<string> names = [],
                details = [];
            foreach ((string name, IReadOnlyList<HeaderIssue> issues) in frames)
            {
                HeaderIssue[] own = [.. issues.Where(issue => issue.Code == rule.Code && issue.Source == source)];
                if (own.Length == 0)
                    continue;
                names.Add(name);
                details.AddRange(
                    own.Select(issue => issue.Detail).Where(detail => detail.Length > 0 && !details.Contains(detail))
                );
            }
            if (names.Count > 0)
                yield return new Finding(
                    rule.Code,
                    rule.Severity,
                    rule.Sentence(Counted.Frames(names.Count), Counted.Some(details)),
                    names
                );
        }
    }
}
