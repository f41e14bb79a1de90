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
        Assert.Equal(label, FindingOptions.Label(new Finding(code, Severity.Warning, "What was found.", [])));
}
