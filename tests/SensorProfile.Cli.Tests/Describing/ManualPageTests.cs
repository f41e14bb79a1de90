using System.Diagnostics;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Describing;

/// <summary>The manual page is sound roff and says what the help says.</summary>
public sealed class ManualPageTests
{
    private static string Page { get; } =
        new SensorProfileCommand
        {
            OnItsOwn = true,
            Environment = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = "1700000000" },
        }
            .Run("man")
            .Expect(0)
            .Output;

    [NeedsProgramTheory("man")]
    [InlineData(80)]
    [InlineData(40)]
    public void ManShowsEveryCommandWithoutAWarning(int columns)
    {
        (string shown, string warnings) = Show("man", ["--warnings=all", "-E", "UTF-8", "-P", "cat", "-l"], columns);
        Assert.Equal("", warnings);
        string words = string.Join(' ', shown.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        foreach (string name in CommandList.Names)
            Assert.Contains($"sensorprofile {name}", words, StringComparison.Ordinal);
        if (columns >= 80) // man writes name, date and section of the last line over one another in less
            Assert.Contains("2023-11-14", words, StringComparison.Ordinal);
        Assert.Contains("EXIT STATUS", words, StringComparison.Ordinal);
        Assert.Contains("How the stack", words, StringComparison.Ordinal); // further on a word may be divided
    }

    [NeedsProgramTheory("mandoc")]
    [InlineData("warning")]
    public void MandocFindsNothingToMend(string level)
    {
        (string found, string errors) = Show("mandoc", ["-T", "lint", "-W", level], 80);
        Assert.Equal("", found + errors);
    }

    private static (string Output, string Errors) Show(string program, string[] arguments, int columns)
    {
        using TemporaryFolder folder = new();
        string file = folder["sensorprofile.1"];
        File.WriteAllText(file, Page);
        ProcessStartInfo start = new(program, [.. arguments, file])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["MANWIDTH"] = $"{columns}";
        start.Environment["LC_ALL"] = "C.UTF-8";
        start.Environment["MAN_KEEP_FORMATTING"] = null;
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (output, errors.Result);
    }
}
