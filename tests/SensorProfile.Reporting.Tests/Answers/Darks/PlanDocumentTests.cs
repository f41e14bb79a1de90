using System.Globalization;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Tables;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Reporting.Tests.Answers.Darks;

/// <summary>A plan of darks in words.</summary>
public class PlanDocumentTests
{
    [Fact]
    public void AnUncooledNightEndsWithItsColdestMaster()
    {
        AnswerDocument said = PlanDocument.Compose(
            Find(new Tarn(), PlannedLights.Usual(-2) with { EndCelsius = -10 }, cooled: false)
        );
        Assert.Equal("end of the night, when the lights are done", said.Tables[0].Rows[^1][5]);
        Assert.Contains("at the end of the night", said.Reason, StringComparison.Ordinal);
    }

    [Fact] // the profile ends at 5 °C and is trusted to 15 °C
    public void LightsBeyondTheProfileAreNamed()
    {
        AnswerDocument said = PlanDocument.Compose(
            Find(
                new Tarn(),
                new PlannedLights
                {
                    ExposureSeconds = 300,
                    StartCelsius = 18,
                    EndCelsius = 2,
                    Temperatures = [18, 17, 4, 3, 3, 2],
                    Lights = 60,
                },
                cooled: false
            )
        );
        Assert.True(said.CannotTell);
        Assert.EndsWith(
            "cannot tell for 20 lights (300 s between 17 °C and 18 °C).",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains(said.Findings, f => f.Code == "lights-not-planned");
    }

    [Fact] // k positions divide the variance of the master: what is asked for is then n/k
    public void AnUnditheredPlanSaysWhatDitheringSaves()
    {
        PlanAnswer plain = Find(
            new Tarn(),
            new PlannedLights
            {
                ExposureSeconds = 60,
                StartCelsius = -10,
                Lights = 100,
            }
        );
        AnswerDocument said = PlanDocument.Compose(plain);
        // a plan that nobody carries out is no advice without it
        Assert.EndsWith(
            $"; dither over {plain.Saving!.Positions} positions and {plain.Saving.Frames} frames will do.",
            said.Sentence,
            StringComparison.Ordinal
        );
        Finding flagged = Assert.Single(said.Findings, f => f.Code == "more-darks-than-practical");
        double ratio = (0.36 + 2.25 + 0.64 / 12) / (0.36 + 2.25 + 0.64 / 12 + 30);
        Assert.Contains(
            $"50 of them cost this stack {Plain.Percent(MinDarks.Loss(ratio, 100, 50))} instead of 5 %",
            flagged.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WithoutADistributionDarksThatWouldShowItAreNamed()
    {
        AnswerDocument said = PlanDocument.Compose(
            Find(
                new Tarn { Distribution = false },
                PlannedLights.Usual(2) with
                {
                    EndCelsius = 0,
                    Temperatures = [2, 1, 0],
                }
            )
        );
        Assert.StartsWith("Cannot tell how far one master serves", said.Sentence, StringComparison.Ordinal);
        Assert.Contains(said.Findings, f =>
            f.Code == "masters-not-sure" && f.Message.Contains("8 darks of 300 s", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void TheNumberOfDarksSaysWhyNoFewer()
    {
        PlanAnswer plan = Find(new Tarn(), PlannedLights.Usual(-10) with { DitherPositions = 40 });
        Assert.EndsWith(
            "the fewest that can show up a cosmic-ray hit.",
            DarkCountWords.Phrase(plan.Stacks.Single()).Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void TheTableReadsBackInEveryCulture()
    {
        PlanAnswer plan = Find(
            new Tarn(),
            new PlannedLights
            {
                ExposureSeconds = 12.5,
                StartCelsius = -9.5,
                Lights = 10,
            }
        );
        string[] lines = InCulture.Run("de-DE", () =>
        {
            using var writer = new StringWriter(CultureInfo.InvariantCulture);
            DecisionTables.Write(plan, writer);
            return writer.ToString().Split("\r\n");
        });
        Assert.StartsWith(
            "exposure_s,temperature_c,gain,offset,iso,binning,readout,frames,",
            lines[0],
            StringComparison.Ordinal
        );
        Assert.StartsWith("12.5,-9.5,100,30,,1x1,,", lines[1], StringComparison.Ordinal);
    }

    private static PlanAnswer Find(Tarn camera, PlannedLights lights, bool cooled = true) =>
        DarksPlan.Find(
            camera.Profile(),
            new PlanQuestion
            {
                Lights = [lights],
                Sky = SkyRate.Given(0.5),
                Cooled = cooled,
            }
        );
}
