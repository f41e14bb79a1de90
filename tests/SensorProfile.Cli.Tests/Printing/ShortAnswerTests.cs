using SensorProfile.Cli.Printing;
using SensorProfile.Cli.Terminal;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Tests.Printing;

/// <summary>What stands on the terminal of a long answer.</summary>
public sealed class ShortAnswerTests
{
    [Fact] // seen: six of thirteen masters, each with the same cure, and no room left for the table
    public void FindingsOfOneKindAreToldOnce()
    {
        AnswerDocument reply = new()
        {
            Command = "darks check",
            Sentence = "Keep them.",
            Verdict = "keep",
            Findings =
            [
                .. Enumerable
                    .Range(1, 13)
                    .Select(i => new Finding("master-turned", Severity.Warning, $"{i}.fits is rotated by 180°.", [])),
                new Finding("another-sensor", Severity.Warning, "14.fits does not fit.", []),
            ],
        };
        Assert.Equal(
            [
                "warning: 1.fits is rotated by 180°. [master-turned] (and 12 more like it)",
                "warning: 14.fits does not fit. [another-sensor]",
            ],
            ShortAnswer
                .Lines(reply, new Paper(200, Letters.All), 15)
                .Where(line => line.StartsWith("warning", StringComparison.Ordinal))
        );
    }
}
