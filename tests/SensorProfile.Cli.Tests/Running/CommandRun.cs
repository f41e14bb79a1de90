using System.Text.Json;
using System.Text.Json.Nodes;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>What a finished command left behind.</summary>
internal sealed record CommandRun(int ExitCode, string Output, string Error)
{
    public string FirstLine => Output.Split('\n')[0];

    /// <summary>What <c>--json</c> printed; it keeps to its schema in every test that looks at it.</summary>
    public JsonElement Json
    {
        get
        {
            Assert.Empty(AnswerContract.Breaches(JsonNode.Parse(Output)!));
            return JsonDocument.Parse(Output).RootElement;
        }
    }

    /// <summary>Fails with the command's own words when the exit code is another.</summary>
    public CommandRun Expect(int exitCode)
    {
        Assert.True(
            exitCode == ExitCode,
            $"Exit code {ExitCode} instead of {exitCode}.\nOutput: {Output}\nError: {Error}"
        );
        return this;
    }
}
