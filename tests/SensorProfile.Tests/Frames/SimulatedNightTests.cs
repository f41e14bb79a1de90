using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Tests.Frames;

/// <summary>A complete night, written by the simulation, comes back as the sets that were asked for.</summary>
public sealed class SimulatedNightTests : IDisposable
{
    private readonly FrameFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EverySetComesBackAsItWasTakenAndNothingIsMissing()
    {
        double[] temperatures = [-20, -10, 0],
            exposures = [10, 60, 300];
        CameraDescription camera = new()
        {
            Name = "Tarn-9M",
            Width = 8,
            Height = 6,
            Cooled = true,
            Shots =
            [
                new Shot
                {
                    Kind = FrameKind.Bias,
                    Temperature = -10,
                    Count = 8,
                },
                .. Enumerable
                    .Range(1, 6)
                    .Select(level => new Shot
                    {
                        Kind = FrameKind.Flat,
                        Temperature = -10,
                        Exposure = level,
                        Count = 2,
                        Level = 100 * level,
                    }),
                .. temperatures.SelectMany(t =>
                    exposures.Select(s => new Shot
                    {
                        Kind = FrameKind.Dark,
                        Temperature = t,
                        Exposure = s,
                        Count = 3,
                    })
                ),
            ],
        };
        Simulator.Write(camera, folder.Path, seed: 1);
        Inventory inventory = folder.Read();
        Assert.Empty(inventory.Rejected);
        Assert.Equal(8 + 12 + 27, inventory.Frames.Count);
        Assert.Equal(
            [
                (FrameKind.Bias, 8),
                .. temperatures.SelectMany(_ => exposures.Select(_ => (FrameKind.Dark, 3))),
                .. Enumerable.Repeat((FrameKind.Flat, 2), 6),
            ],
            inventory.Sets.Select(s => (s.Kind, s.Frames.Count))
        );
        Assert.Equal(
            exposures.SelectMany(_ => temperatures),
            inventory.Sets.Where(s => s.Kind == FrameKind.Dark).Select(s => Math.Round(s.TemperatureCelsius!.Value))
        );
        Assert.DoesNotContain(inventory.Findings, f => f.Severity != Severity.Note);
        Assert.Empty(MissingMeasurements.Find(inventory));
    }
}
