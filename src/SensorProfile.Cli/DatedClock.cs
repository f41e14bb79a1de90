using System.Globalization;

namespace SensorProfile.Cli;

/// <summary>A clock whose date can be set from outside, so that a profile can be reproduced byte for byte.</summary>
/// <remarks>
/// SOURCE_DATE_EPOCH, seconds since 1970-01-01 UTC, is the convention of reproducible builds (reproducible-builds.org,
/// specification 1.1). Only the date is fixed: elapsed times stay real.
/// </remarks>
internal sealed class DatedClock(DateTimeOffset date) : TimeProvider
{
    private const string Variable = "SOURCE_DATE_EPOCH";

    /// <summary>The system's clock, or one with the date given in the environment.</summary>
    public static TimeProvider FromEnvironment() =>
        long.TryParse(
            Environment.GetEnvironmentVariable(Variable),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out long seconds
        )
        && seconds <= 253402300799
            ? new DatedClock(DateTimeOffset.FromUnixTimeSeconds(seconds))
            : System;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => date;
}
