namespace SensorProfile.Tests.Fitting;

/// <summary>Comparison with a number as it was printed.</summary>
internal static class Digits
{
    /// <summary>Within a relative tolerance.</summary>
    public static void Relative(double expected, double actual, double tolerance)
    {
        if (Math.Abs(actual - expected) > tolerance * Math.Abs(expected) || double.IsNaN(actual))
            Assert.Fail(
                FormattableString.Invariant(
                    $"expected {expected:R}, got {actual:R}: off by {Math.Abs(actual / expected - 1):E2}, allowed {tolerance:E2}"
                )
            );
    }

    /// <summary>Within an absolute tolerance: half a unit of the last digit printed.</summary>
    public static void Printed(double expected, double actual, double halfUnit)
    {
        if (Math.Abs(actual - expected) > halfUnit * (1 + 1e-6) || double.IsNaN(actual))
            Assert.Fail(
                FormattableString.Invariant(
                    $"expected {expected:R}, got {actual:R}: off by {Math.Abs(actual - expected):E2}, allowed {halfUnit:E2}"
                )
            );
    }
}
