using SensorProfile.Cli.Commands;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Answers.Years;

namespace SensorProfile.Cli.Printing;

/// <summary>What <c>--json</c> prints, command by command.</summary>
internal static class AnswerShapes
{
    public static IReadOnlyList<AnswerShape> All { get; } =
    [
        DemoDocument.Shape,
        ShotsDocument.Shape,
        SurveyDocument.Shape,
        ProfileDocument.Shape("characterise"),
        ProfileDocument.Shape("report"),
        SetpointDocument.Shape,
        ExposureDocument.Shape,
        PlanDocument.Shape,
        MatchDocument.Shape,
        DarkLibraryDocument.Shape,
        DarkPredictionDocument.Shape,
        FlatPlanDocument.Shape,
        DriftDocument.Shape,
        FleetDocument.Shape,
        SimulateCommand.Shape,
        SetupDocument.Shape,
    ];
}
