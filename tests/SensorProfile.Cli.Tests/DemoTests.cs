using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>The demo, run once, and every example that the help shows, run on what the demo left.</summary>
[Collection(DemoNight.Shared)]
public sealed class DemoTests(DemoNight night)
{
    [Fact]
    public void TheFirstLineIsTheCameraAndThePlacesStandAtTheEnd()
    {
        Assert.StartsWith("Read noise 1.6", night.Run.FirstLine, StringComparison.Ordinal);
        Assert.Contains(
            "\nReport:   sensorprofile-demo/report.html\nTo print: sensorprofile-demo/report.pdf\n",
            night.Run.Output,
            StringComparison.Ordinal
        );
        foreach (
            string file in new[] { "report.html", "report.pdf", "profile.json", "camera.json", "frames/truth.json" }
        )
            Assert.True(File.Exists(Path.Combine(night.Folder["sensorprofile-demo"], file)), file);
    }

    [Fact]
    public void TheFourNumbersAgreeWithTheTruthOfTheSimulatedCamera()
    {
        using JsonDocument truth = JsonDocument.Parse(
            File.ReadAllText(night.Folder["sensorprofile-demo/frames/truth.json"])
        );
        using JsonDocument profile = JsonDocument.Parse(
            File.ReadAllText(night.Folder["sensorprofile-demo/profile.json"])
        );
        JsonElement mode = profile.RootElement.GetProperty("modes")[0];
        Assert.InRange(Z(mode.GetProperty("gain"), truth.RootElement.GetProperty("gain").GetDouble()), -4, 4);
        Assert.InRange(
            Z(mode.GetProperty("readNoise"), truth.RootElement.GetProperty("readNoiseRms").GetDouble()),
            -4,
            4
        );

        static double Z(JsonElement measured, double expected) =>
            (measured.GetProperty("value").GetDouble() - expected)
            / measured.GetProperty("standardUncertainty").GetDouble();
    }

    [Fact]
    public void ASecondDemoInTheSamePlaceIsRefused() =>
        Assert.Contains(
            "The output folder sensorprofile-demo exists.",
            night.Folder.Command.Run("demo").Expect(ExitCodes.UnwritableOutput).Error,
            StringComparison.Ordinal
        );

    [Fact]
    public void EveryExampleInTheHelpWorksOnTheDemosOutput()
    {
        SimulatedNight.Write(
            night.Folder["lights"],
            SimulatedNight.DarksOnly.Replace(
                "\"kind\": \"dark\"",
                "\"kind\": \"light\", \"level\": 600",
                StringComparison.Ordinal
            )
        );
        // the desk stays open until it is closed: its own tests hold it
        foreach (string[] example in CommandList.Examples.Where(e => e[0] is not ("demo" or "desk")))
        {
            CommandRun run = night.Folder.Command.Run(example);
            Assert.True(
                run.ExitCode is ExitCodes.Answered or ExitCodes.CannotTell,
                $"{string.Join(' ', example)}: {run.ExitCode}, {run.Error}"
            );
            Assert.NotEqual("", run.FirstLine);
        }
    }
}
