using SensorProfile.Cli.Printing;

namespace SensorProfile.Cli.Tests.Printing;

/// <summary>Options stand beside findings by code, and the library itself names none.</summary>
public sealed class FindingOptionsTests
{
    [Fact]
    public void EveryCodeIsOneOfTheCatalogue() =>
        Assert.All(FindingOptions.Known.Keys, code => Assert.NotNull(FindingCodes.Find(code)));

    [Theory]
    [InlineData("kind-missing", "[kind-missing: --names-say]")]
    [InlineData("averaged-frame", "[averaged-frame]")]
    public void TheOptionStandsBesideTheCode(string code, string label) =>
        Assert.Equal(label, FindingOptions.Label(Found(code), []));

    [Theory]
    [InlineData("probe-offset-between-sets", "temperatures-by-hot-pixels")]
    [InlineData("probe-misses-drift", "temperatures-not-replaced")]
    [InlineData("kind-missing", "kind-from-name")]
    public void AnOptionThatWasUsedIsNotProposed(string code, string sign)
    {
        Assert.Equal($"[{code}]", FindingOptions.Label(Found(code), [Found(code), Found(sign)]));
        Assert.NotEqual($"[{code}]", FindingOptions.Label(Found(code), [Found(code)]));
        Assert.NotNull(FindingCodes.Find(sign));
    }

    private static Finding Found(string code) => new(code, Severity.Warning, "What was found.", []);
}
