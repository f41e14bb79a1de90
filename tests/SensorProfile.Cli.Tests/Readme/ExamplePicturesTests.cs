using SensorProfile.Cli.Tests.Running;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Views;

namespace SensorProfile.Cli.Tests.Readme;

/// <summary>The README's pictures are figures of the example in <c>reports/</c>.</summary>
/// <remarks>When the example has changed, SENSORPROFILE_REWRITE=1 draws them anew.</remarks>
public sealed class ExamplePicturesTests
{
    [Fact]
    public void DarkCurrentIsTheReportsFigure() =>
        Check(
            "reports/dark-current.svg",
            StoredResult
                .Open(Checkout.File("reports/profile.json"))
                .Sections.SelectMany(section => section.Figures)
                .First(figure => figure.Table == "tables/dark-current.csv")
        );

    [Fact]
    public void TheSetPointIsTheOneOfTheExample()
    {
        CameraProfile profile = StoredResult.Open(Checkout.File("reports/profile.json")).Profile;
        SetpointAnswer answer = SetpointAdvice.Find(
            profile,
            profile.Modes[0],
            new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
        );
        Check("reports/setpoint.svg", FigureFile.Of(SetpointBlocks.Figure([answer], new FigureCounter(), "")!).First());
    }

    private static void Check(string picture, FigureFile figure)
    {
        string path = Checkout.File(picture);
        byte[] drawn = figure.Svg();
        if (Environment.GetEnvironmentVariable("SENSORPROFILE_REWRITE") == "1")
            File.WriteAllBytes(path, drawn);
        Assert.True(
            File.Exists(path) && drawn.AsSpan().SequenceEqual(File.ReadAllBytes(path)),
            $"{picture} differs from the figure of the example; SENSORPROFILE_REWRITE=1 draws it anew"
        );
    }
}
