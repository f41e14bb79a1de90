using OxyPlot.Annotations;
using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Shots;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Plots.Nights;

namespace SensorProfile.Reporting.Tests;

public sealed class AnswerPageTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("answer-page-").FullName;
    private static readonly CameraProfile _profile = TarnProfile.Build();
    private static readonly SkyRate _sky = SkyRate.Given(0.5);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void ASetpointIsWrittenAsThreeFilesThatAreTheSameAgain()
    {
        SetpointAnswer answer = SetpointAdvice.Find(
            _profile,
            _profile.Modes[0],
            new SetpointQuestion
            {
                ExposureSeconds = 300,
                Sky = _sky,
                Ambient = [new AmbientTemperature("July", 22)],
                MaximumDifference = 35,
            }
        );
        AnswerPage.Write(_profile, answer, Path.Combine(_folder, "a"));
        InCulture.Run("de-DE", () =>
        {
            AnswerPage.Write(_profile, answer, Path.Combine(_folder, "b"));
            return 0;
        });
        string[] files =
        [
            .. Directory
                .GetFiles(Path.Combine(_folder, "a"))
                .Select(Path.GetFileName)
                .Order(StringComparer.Ordinal)
                .OfType<string>(),
        ];
        Assert.Equal(["setpoint.csv", "setpoint.html", "setpoint.pdf"], files);
        foreach (string file in files)
            Assert.True(
                File.ReadAllBytes(Path.Combine(_folder, "a", file))
                    .AsSpan()
                    .SequenceEqual(File.ReadAllBytes(Path.Combine(_folder, "b", file))),
                file
            );
        Assert.Contains(
            SetpointDocument.Compose(answer).Sentence.Split(' ')[0] + " at",
            File.ReadAllText(Path.Combine(_folder, "a", "setpoint.html")),
            StringComparison.Ordinal
        );
        Assert.Equal(1 + answer.Curve.Count, File.ReadAllLines(Path.Combine(_folder, "a", "setpoint.csv")).Length);
    }

    [Fact]
    public void TheRulesOfThumbStandInThePlots()
    {
        ToleranceAnswer near = DarkTolerance.Find(
            _profile,
            _profile.Modes[0],
            new ToleranceQuestion
            {
                ExposureSeconds = 300,
                Lights = 40,
                Sky = _sky,
            }
        );
        DarkCountAnswer many = DarkCountAdvice.Find(
            _profile,
            _profile.Modes[0],
            new DarkCountQuestion
            {
                ExposureSeconds = 300,
                Lights = 40,
                Sky = _sky,
                TemperatureCelsius = -10,
            }
        );
        Assert.All(TolerancePlot.Draw(near), panel =>
            Assert.Contains(panel.Model.Annotations.OfType<LineAnnotation>(), line =>
                line is { Type: LineAnnotationType.Vertical, X: 5 }
            )
        );
        FlatPlanAnswer flats = FlatPlanAdvice.Find(_profile, _profile.Modes[0], new FlatPlanQuestion { Sky = _sky });
        double[] drawn =
        [
            .. FlatCountPlot
                .Draw(flats)!
                .Model.Annotations.OfType<LineAnnotation>()
                .Where(line => line.Type == LineAnnotationType.Vertical)
                .Select(line => line.X),
        ];
        Assert.Equal([20, 30], drawn);
        Assert.Contains(DarkCountPlot.Draw([many], ["stack"])!.Model.Annotations.OfType<LineAnnotation>(), line =>
            line is { Type: LineAnnotationType.Vertical, X: 20 }
        );
    }

    [Fact]
    public void ListsAndSettingsArePrintedToo()
    {
        PlanAnswer plan = DarksPlan.Find(
            _profile,
            new PlanQuestion { Lights = [PlannedLights.Usual(-10)], Sky = _sky }
        );
        AnswerPage.Write(_profile, plan, _folder);
        AnswerPage.Write(ShotList.Find(new ShotQuestion { Minutes = 120 }), _profile.CreatedUtc, _folder);
        AnswerPage.Write(_profile, ExposureAdvice.Find(_profile, new ExposureQuestion()), _folder);
        AnswerPage.Write(
            _profile,
            FlatPlanAdvice.Find(_profile, _profile.Modes[0], new FlatPlanQuestion { Sky = _sky }),
            _folder
        );
        string[] names =
        [
            "darks-plan.csv",
            "darks-plan.html",
            "darks-plan.pdf",
            "exposure.csv",
            "exposure.html",
            "exposure.pdf",
            "flats-plan.csv",
            "flats-plan.html",
            "flats-plan.pdf",
            "shots.csv",
            "shots.html",
            "shots.pdf",
        ];
        Assert.Equal(names, Directory.GetFiles(_folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("[  ]", File.ReadAllText(Path.Combine(_folder, "darks-plan.html")), StringComparison.Ordinal);
    }
}
