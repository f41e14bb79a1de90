using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>The example in <c>reports/</c> is what <c>sensorprofile demo</c> makes, byte for byte.</summary>
/// <remarks>
/// When a change is meant: look at the files that the failing test leaves beside its assembly, then copy them over
/// <c>reports/</c>.
/// </remarks>
[Collection(DemoNight.Shared)]
public sealed class ExampleReportTests(DemoNight night)
{
    private static readonly string[] files = ["report.pdf", "report.html", "card.pdf", "card.html", "profile.json"];

    [Fact]
    public void TheExampleIsWhatTheDemoMakes()
    {
        string made = Path.Combine(AppContext.BaseDirectory, "reports");
        Directory.CreateDirectory(made);
        var different = new List<string>();
        foreach (string file in files)
        {
            byte[] now = night.Files[file];
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
