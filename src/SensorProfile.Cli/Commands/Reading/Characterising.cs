using SensorProfile.Characterisation;
using SensorProfile.Characterisation.Maps;
using SensorProfile.Cli.Terminal;
using SensorProfile.Frames;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Screening;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Runs the characterisation with progress.</summary>
internal static class Characterising
{
    public static CharacterisationResult Run(
        Session session,
        Inventory inventory,
        double? referenceCelsius,
        bool quick,
        TemperatureSource temperatures = TemperatureSource.Headers,
        DefectThresholds? thresholds = null,
        StageClock? stages = null
    )
    {
        CharacterisationOptions options = new()
        {
            ReferenceTemperature = referenceCelsius,
            Quick = quick,
            Temperatures = temperatures,
            Thresholds = thresholds,
            Stages = stages,
            SoftwareVersion = CommandLine.Version,
            Clock = session.Clock,
        };
        CharacterisationResult result = session.Side.Watch(display =>
            Characteriser.Run(inventory, options, new Progress(display), session.Stop)
        );
        session.Stop.ThrowIfCancellationRequested();
        return result;
    }

    private sealed class Progress(IProgressDisplay display) : IProgress<CharacterisationProgress>
    {
        public void Report(CharacterisationProgress value) =>
            display.Show(value.Stage, value.FramesDone, value.FramesTotal, value.BytesRead);
    }
}
