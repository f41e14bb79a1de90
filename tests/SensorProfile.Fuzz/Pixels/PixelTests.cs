using System.Globalization;
using Xunit.Abstractions;

namespace SensorProfile.Fuzz.Pixels;

/// <summary>
/// Pixels that no sensor gives: every command answers, cannot tell, or refuses; no fault of the program, no number that
/// is none.
/// </summary>
/// <remarks>SENSORPROFILE_FUZZ_NIGHTS sets how many nights are tried, from SENSORPROFILE_FUZZ_FIRST on.</remarks>
public sealed class PixelTests(ITestOutputHelper output)
{
    private const int OrdinaryNights = 6;

    [Fact]
    public void NonsenseGivesAnswersWithoutNonsense()
    {
        int first = Number("SENSORPROFILE_FUZZ_FIRST", 1),
            nights = Number("SENSORPROFILE_FUZZ_NIGHTS", OrdinaryNights);
        SortedDictionary<string, string> found = PixelRun.Go(first, nights, TimeSpan.MaxValue);
        foreach ((string fault, string where) in found)
            output.WriteLine($"{where}: {fault}");
        Assert.Empty(found.Keys);
    }

    /// <summary>Nights that once ended in exit code 70 or in a number that is none.</summary>
    [Theory]
    [MemberData(nameof(Mended))]
    public void NightsThatOnceBrokeACommandDoNotAnyMore(int seed) =>
        Assert.Empty(PixelRun.Go(seed, 1, TimeSpan.MaxValue).Keys);

    public static TheoryData<int> Mended => [1, 4, 11, 28, 54, 2010, 5163];

    private static int Number(string variable, int ordinary) =>
        int.TryParse(
            Environment.GetEnvironmentVariable(variable),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int asked
        )
            ? asked
            : ordinary;
}
