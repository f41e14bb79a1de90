using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>The example in <c>reports/</c> is what <c>sensorprofile demo</c> makes, byte for byte.</summary>
/// <remarks>
/// When a change is meant: look at the files that the failing test leaves beside its assembly, then copy them over
/// <c>reports/</c>.
/// </remarks>
public sealed class ExampleReportTests
{
    private const string DayAfterTheDemoNight = "1949904000"; // 2031-10-16 08:00 UTC
    private static readonly string[] files = ["report.pdf", "report.html", "card.pdf", "card.html", "profile.json"];

    [Fact]
    public void TheExampleIsWhatTheDemoMakes()
    {
        using TemporaryFolder folder = new();
        SensorProfileCommand command = folder.Command with
        {
            Environment = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = DayAfterTheDemoNight },
        };
        command.Run("demo", "--out", "demo").Expect(0);
        string made = Path.Combine(AppContext.BaseDirectory, "reports");
        Directory.CreateDirectory(made);
        var different = new List<string>();
        foreach (string file in files)
        {
            byte[] now = File.ReadAllBytes(folder[Path.Combine("demo", file)]);
            File.WriteAllBytes(Path.Combine(made, file), now);
            string example = Checkout.File(Path.Combine("reports", file));
            if (!File.Exists(example) || !now.AsSpan().SequenceEqual(File.ReadAllBytes(example)))
                different.Add(file);
        }
        Assert.True(
            different.Count == 0,
            $"{string.Join(", ", different)} differ from the example; the new ones are in {made}"
        );
    }
}
