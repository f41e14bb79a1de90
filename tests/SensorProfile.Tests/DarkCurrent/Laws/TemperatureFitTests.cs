using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles.Darks;
using SensorProfile.Tests.Fitting;

namespace SensorProfile.Tests.DarkCurrent.Laws;

/// <summary>
/// scipy.optimize.curve_fit on the same points, properties that every fit has, and what the user is told.
/// </summary>
public class TemperatureFitTests
{
    private static readonly double[] T = [-25, -20, -15, -10, -5, 0],
        I = [.0110, .0195, .0340, .0620, .1080, .1950],
        U = [.0006, .0010, .0017, .0030, .0050, .0100];

    private static TemperaturePoint[] Points(double scale = 1) =>
        [.. T.Select((t, i) => new TemperaturePoint(t, I[i], U[i] * scale))];

    private static DarkCurrentModel Model(TemperatureFitResult result, string name) =>
        result.Models.Single(m => m.Name == name);

    [Fact]
    public void DoublingFitAgreesWithALibrary()
    {
        DarkCurrentModel model = Model(TemperatureFit.Fit(Points(), -10), "doubling");
        Digits.Relative(0.061331447710839, model.Parameters[0].Value, 1e-12);
        Digits.Relative(6.0317742703997, model.Parameters[1].Value, 1e-12);
        Digits.Relative(1.6634143811878e-6, model.Covariance[0][0], 1e-9);
        Digits.Relative(-3.891827749386e-5, model.Covariance[0][1], 1e-9);
        Digits.Relative(0.016906482135087, model.Covariance[1][1], 1e-9);
        Digits.Printed(0.2164823053, model.ChiSquared, 5e-11);
        Digits.Printed(8.216482305, model.InformationCriterion!.Value, 5e-10);
        // curve_fit without absolute_sigma: only the ratios of the uncertainties known.
        Digits.Relative(9.149885569e-4, model.Covariance[1][1] * model.ChiSquared / model.DegreesOfFreedom, 1e-7);
        Digits.Relative(9.002494499e-8, model.Covariance[0][0] * model.ChiSquared / model.DegreesOfFreedom, 1e-7);
    }

    [Fact]
    public void ArrheniusFitAgreesWithALibrary()
    {
        DarkCurrentModel model = Model(TemperatureFit.Fit(Points(), -10), "arrhenius");
        Digits.Relative(0.06293522054694, model.Parameters[0].Value, 1e-9);
        Digits.Relative(0.6715865067014, model.Parameters[1].Value, 1e-9);
        Digits.Relative(1.783022953e-6, model.Covariance[0][0], 1e-7);
        Digits.Relative(5.232909666e-6, model.Covariance[0][1], 1e-7);
        Digits.Relative(2.202791664e-4, model.Covariance[1][1], 1e-7);
        Digits.Printed(2.378545506, model.ChiSquared, 5e-10);
        Digits.Printed(6.158899776, model.DoublingTemperature!.Value, 5e-9);
        Digits.Printed(10.378545506, model.InformationCriterion!.Value, 5e-10);
    }

    // T' = m + (1 + ε)(T − m) + o turns exp(T·ln 2/ΔT₂) into the same with ΔT₂·(1 + ε), and the rate at r moves by
    // −I·ln 2/ΔT₂·(o + ε·(r − m)).
    [Fact]
    public void AThermometerThatIsOffMovesTheWholeLaw()
    {
        const double scale = 0.05,
            offset = 0.3,
            middle = -12,
            reference = -10;
        TemperaturePoint[] off =
        [
            .. Points().Select(p => p with { SharedErrors = [offset, scale * (p.TemperatureCelsius - middle)] }),
        ];
        foreach (string name in new[] { "doubling", "arrhenius" })
        {
            DarkCurrentModel exact = Model(TemperatureFit.Fit(Points(), reference), name);
            DarkCurrentModel shared = Model(TemperatureFit.Fit(off, reference), name);
            (Measurement doubling, Measurement rate) = (exact.DoublingTemperature!, exact.RateAtReference!);
            double slope = rate.Value * Math.Log(2) / doubling.Value;
            double Added(Measurement with, Measurement without) =>
                Math.Sqrt(Math.Pow(with.StandardUncertainty, 2) - Math.Pow(without.StandardUncertainty, 2));
            // an Arrhenius law that is stretched is not quite one, and an offset changes its doubling temperature a little
            double close = name == "doubling" ? 1e-6 : 0.06;
            Digits.Relative(scale * doubling.Value, Added(shared.DoublingTemperature!, doubling), close);
            Digits.Relative(
                slope * double.Hypot(offset, scale * (reference - middle)),
                Added(shared.RateAtReference!, rate),
                close
            );
        }
    }

    [Fact]
    public void ADifferenceBelowSixIsNotDecided()
    {
        TemperatureFitResult result = TemperatureFit.Fit(Points(), -10);
        Assert.Equal("doubling", result.Selected);
        Finding finding = result.Findings.Single(f => f.Code == "temperature-law-not-decided");
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains("arrhenius", finding.Message, StringComparison.Ordinal);
        Assert.Equal(6.0317742703997, result.DoublingTemperature!.Value, 9);
        // The spread to the other laws makes it less certain than its own law says (0.130), but the middle of the
        // points keeps that small.
        Assert.InRange(result.DoublingTemperature.StandardUncertainty, 0.1301, 0.25);
    }

    [Fact]
    public void PredictionAgreesWithALibrary()
    {
        DarkCurrentLaw law = DarkCurrentLaw.FromModel(Model(TemperatureFit.Fit(Points(), -10), "doubling"), -10);
        Digits.Printed(0.0061593629783, law.RateAt(-30).Value, 5e-14);
        Digits.Relative(0.000302578109, law.RateAt(-30).StandardUncertainty, 1e-8);
        Digits.Printed(0.343790427178, law.RateAt(5).Value, 5e-13);
        Digits.Relative(0.016072416627, law.RateAt(5).StandardUncertainty, 1e-8);
    }

    [Fact]
    public void MovingTheReferenceChangesOnlyTheRate()
    {
        TemperatureFitResult a = TemperatureFit.Fit(Points(), -10),
            b = TemperatureFit.Fit(Points(), 3);
        foreach (DarkCurrentModel one in a.Models)
        {
            DarkCurrentModel other = Model(b, one.Name);
            Digits.Relative(one.ChiSquared, other.ChiSquared, 1e-8);
            DarkCurrentLaw here = DarkCurrentLaw.FromModel(one, -10),
                there = DarkCurrentLaw.FromModel(other, 3);
            Digits.Relative(here.RateAt(-18).Value, there.RateAt(-18).Value, 1e-7);
            Digits.Relative(here.RateAt(-18).StandardUncertainty, there.RateAt(-18).StandardUncertainty, 1e-5);
        }
        Digits.Relative(Model(a, "doubling").Parameters[1].Value, Model(b, "doubling").Parameters[1].Value, 1e-10);
        Digits.Relative(
            Model(a, "doubling").Parameters[1].StandardUncertainty,
            Model(b, "doubling").Parameters[1].StandardUncertainty,
            1e-8
        );
    }

    [Fact]
    public void ScalingUncertaintiesAndDoublingPoints()
    {
        DarkCurrentModel one = Model(TemperatureFit.Fit(Points(), -10), "doubling"),
            wide = Model(TemperatureFit.Fit(Points(3), -10), "doubling");
        DarkCurrentModel twice = Model(TemperatureFit.Fit([.. Points(), .. Points()], -10), "doubling");
        for (int i = 0; i < 2; i++)
        {
            Digits.Relative(one.Parameters[i].Value, wide.Parameters[i].Value, 1e-10);
            Digits.Relative(9 * one.Covariance[i][i], wide.Covariance[i][i], 1e-9);
            Digits.Relative(one.Covariance[i][i] / 2, twice.Covariance[i][i], 1e-9);
        }
        Digits.Relative(one.ChiSquared / 9, wide.ChiSquared, 1e-9);
    }

    [Fact]
    public void CovarianceIsPositiveAndSymmetric()
    {
        foreach (DarkCurrentModel model in TemperatureFit.Fit(Points(), -10).Models)
        {
            for (int i = 0; i < model.Parameters.Count; i++)
            {
                if (model.Parameters[i].Name == "floor" && model.Parameters[i].Value == 0)
                    Assert.Equal((0.0, true), (model.Covariance[i][i], model.Parameters[i].StandardUncertainty > 0));
                else
                    Digits.Relative(Math.Sqrt(model.Covariance[i][i]), model.Parameters[i].StandardUncertainty, 1e-14);
                for (int j = 0; j < i; j++)
                {
                    Assert.Equal(model.Covariance[i][j], model.Covariance[j][i]);
                    Assert.True(
                        Math.Abs(model.Covariance[i][j])
                            <= model.Parameters[i].StandardUncertainty
                                * model.Parameters[j].StandardUncertainty
                                * (1 + 1e-9)
                    );
                }
            }
        }
    }

    [Fact]
    public void GainUncertaintyWidensRatesOnly()
    {
        TemperatureFitResult without = TemperatureFit.Fit(Points(), -10),
            with = TemperatureFit.Fit(Points(), -10, commonRelativeUncertainty: 0.05);
        Assert.Equal(without.DoublingTemperature!.Value, with.DoublingTemperature!.Value);
        Digits.Relative(
            without.DoublingTemperature.StandardUncertainty,
            with.DoublingTemperature.StandardUncertainty,
            1e-8
        );
        Digits.Relative(
            Math.Sqrt(
                Math.Pow(Model(without, "doubling").RateAtReference!.StandardUncertainty, 2)
                    + Math.Pow(0.05 * 0.061331447710839, 2)
            ),
            Model(with, "doubling").RateAtReference!.StandardUncertainty,
            1e-9
        );
    }

    [Fact]
    public void OrderOfThePointsDoesNotMatter()
    {
        TemperatureFitResult a = TemperatureFit.Fit(Points(), -10),
            b = TemperatureFit.Fit([.. Points().Reverse()], -10);
        Assert.Equal(a.DoublingTemperature, b.DoublingTemperature);
        Assert.Equal(a.RateAtReference, b.RateAtReference);
    }

    [Fact]
    public void TwoTemperaturesAreRefusedWithWhatIsMissing()
    {
        TemperatureFitResult result = TemperatureFit.Fit([new(-10, 0.06, 0.001), new(0, 0.19, 0.001)], -10);
        Assert.Null(result.DoublingTemperature);
        Assert.Null(result.Selected);
        Finding finding = Assert.Single(result.Findings);
        Assert.Equal(("too-few-temperatures", Severity.Refusal), (finding.Code, finding.Severity));
        Assert.Equal(
            "Dark current was measured at 2 temperatures (−10, 0 °C), so no doubling temperature is given: it "
                + "needs 3 temperatures, better 6; add darks at −5 °C.",
            finding.Message
        );
    }

    [Fact]
    public void RepeatsOfTheSameTemperatureDoNotCountAsMore()
    {
        TemperatureFitResult result = TemperatureFit.Fit(
            [new(-10, 0.06, 0.001), new(-9.8, 0.061, 0.001), new(0, 0.19, 0.001)],
            -10
        );
        Assert.Equal("too-few-temperatures", Assert.Single(result.Findings).Code);
    }

    [Fact]
    public void NoPointsAreRefused()
    {
        TemperatureFitResult result = TemperatureFit.Fit([], -10);
        Assert.Equal("too-few-temperatures", Assert.Single(result.Findings).Code);
        Assert.Null(result.MeasuredRange);
    }

    [Fact]
    public void ThreeTemperaturesGiveADoublingButNoComparison()
    {
        TemperatureFitResult result = TemperatureFit.Fit(
            [new(-20, 0.0195, 0.0010), new(-10, 0.062, 0.003), new(0, 0.195, 0.01)],
            -10
        );
        Assert.Equal("doubling", result.Selected);
        Assert.All(result.Models, m => Assert.Null(m.InformationCriterion));
        Assert.Contains(result.Findings, f => f.Code == "temperature-laws-not-comparable");
        Assert.InRange(result.DoublingTemperature!.Value, 5.8, 6.3);
        // Wider than the doubling law alone says, because the others are just as possible.
        Assert.True(
            result.DoublingTemperature.StandardUncertainty > result.Models[0].DoublingTemperature!.StandardUncertainty
        );
    }

    [Fact]
    public void RatesBelowTheirUncertaintyAreRefused()
    {
        TemperatureFitResult result = TemperatureFit.Fit(
            [new(-20, 0.0001, 0.001), new(-10, -0.0004, 0.001), new(0, 0.0009, 0.001)],
            -10
        );
        Assert.Equal("dark-rate-not-resolved", Assert.Single(result.Findings).Code);
        Assert.Null(result.RateAtReference);
    }

    [Fact]
    public void RatesThatFallWithTemperatureGetNoDoubling()
    {
        TemperatureFitResult result = TemperatureFit.Fit(
            [new(-20, 0.3, 0.01), new(-10, 0.2, 0.01), new(0, 0.1, 0.01), new(10, 0.05, 0.01)],
            -10
        );
        Assert.Null(result.DoublingTemperature);
        Assert.Contains(result.Findings, f => f.Severity == Severity.Refusal);
    }

    [Fact]
    public void ANegativeColdRateIsUsedAsItIs()
    {
        TemperaturePoint[] points =
        [
            new(-30, -0.001, 0.003),
            new(-20, 0.0195, 0.003),
            new(-10, 0.062, 0.003),
            new(0, 0.195, 0.005),
        ];
        TemperatureFitResult result = TemperatureFit.Fit(points, -10);
        Assert.InRange(result.DoublingTemperature!.Value, 5.5, 6.5);
    }

    [Fact]
    public void AFloorAtItsBoundIsAnUpperLimit()
    {
        // Rates of the doubling law with the coldest lowered, so that a negative floor would fit better.
        TemperaturePoint[] points =
        [
            .. T.Select(t => new TemperaturePoint(
                t,
                0.06 * Math.Pow(2, (t + 10) / 6) - (t < -20 ? 0.002 : 0),
                0.001 + 0.02 * Math.Pow(2, (t + 10) / 6) * 0.06
            )),
        ];
        DarkCurrentModel model = Model(TemperatureFit.Fit(points, -10), "doubling+floor");
        ModelParameter floor = model.Parameters[2];
        Assert.Equal(("floor", 0.0), (floor.Name, floor.Value));
        // of the order of the coldest point's own
        Assert.InRange(floor.StandardUncertainty, 0.0002, 0.003);
        Assert.Matches("^held at zero, below 0\\.00[0-9]+ e-/px/s with 95 % confidence$", floor.Method);
        Digits.Relative(Model(TemperatureFit.Fit(points, -10), "doubling").ChiSquared, model.ChiSquared, 1e-9);
    }

    [Fact]
    public void AClearFloorIsFoundAndSaid()
    {
        double[] t = [-30, -25, -20, -15, -10, -5, 0, 5];
        TemperaturePoint[] points =
        [
            .. t.Select(v => 0.01 + 0.02 * Math.Pow(2, (v + 10) / 6))
                .Zip(t, (r, v) => new TemperaturePoint(v, r, 0.0002 + 0.005 * r)),
        ];
        TemperatureFitResult result = TemperatureFit.Fit(points, -10);
        Assert.Equal("doubling+floor", result.Selected);
        Finding finding = result.Findings.Single(f => f.Code == "dark-floor");
        Assert.Equal(
            "Light reaches the sensor in the dark, or the sensor glows: 33 % of the rate at −10 °C (0.01 e⁻/px/s) does not fall "
                + "with temperature. Cover camera and viewfinder, take a dark in a dark room and compare; without this light dark "
                + "current doubles every 6.0 °C.",
            finding.Message
        );
        Assert.Equal(Severity.Warning, finding.Severity);
        // All of the current, floor included: (0.02 + 0.01)/0.02 times slower.
        Digits.Relative(9, result.DoublingTemperature!.Value, 0.02);
    }

    [Fact]
    public void ScatterBeyondTheUncertaintiesIsExplainedByTemperature()
    {
        // Temperatures wrong by ±0.2 °C in turn, rates known to 0.1 %.
        TemperaturePoint[] points =
        [
            .. T.Select((t, i) => 0.06 * Math.Pow(2, (t + (i % 2 == 0 ? 0.2 : -0.2) + 10) / 6))
                .Zip(T, (r, t) => new TemperaturePoint(t, r, 0.001 * r)),
        ];
        TemperatureFitResult result = TemperatureFit.Fit(points, -10);
        Assert.InRange(result.TemperatureScatter, 0.1, 0.4);
        Assert.Contains(result.Findings, f => f.Code == "temperature-scatter");
        DarkCurrentModel model = result.Models.Single(m => m.Name == result.Selected);
        Assert.InRange(model.ChiSquared / model.DegreesOfFreedom, 0.5, 2);
        Assert.InRange(
            Math.Abs(result.DoublingTemperature!.Value - 6) / result.DoublingTemperature.StandardUncertainty,
            0,
            1.96
        );

        TemperatureFitResult told = TemperatureFit.Fit(
            [.. points.Select(p => p with { TemperatureUncertainty = 0.2 })],
            -10
        );
        Assert.True(told.TemperatureScatter < result.TemperatureScatter);
        Assert.DoesNotContain(told.Findings, f => f.Code == "temperature-scatter");
    }

    [Fact]
    public void AWildColdPointWidensAllUncertaintiesInsteadOfAccusingTheThermometer()
    {
        // Six times its uncertainty below the law, where the law is too flat for any temperature error.
        TemperaturePoint[] points =
        [
            .. T.Select(
                (t, i) => new TemperaturePoint(t, 0.06 * Math.Pow(2, (t + 10) / 6) - (i == 0 ? 0.012 : 0), 0.002)
            ),
        ];
        TemperatureFitResult result = TemperatureFit.Fit(points, -10);
        Assert.Equal(0, result.TemperatureScatter);
        Assert.Contains(result.Findings, f =>
            f.Code is "dark-rate-scatter"
            && f.Message.Contains("times more than their uncertainties", StringComparison.Ordinal)
        );
        Assert.InRange(
            Math.Abs(result.DoublingTemperature!.Value - 6) / result.DoublingTemperature.StandardUncertainty,
            0,
            1.96
        );
    }

    [Fact]
    public void ANarrowRangeIsSaid()
    {
        TemperaturePoint[] points =
        [
            .. new double[] { -12, -10, -8, -6 }.Select(t => new TemperaturePoint(
                t,
                0.06 * Math.Pow(2, (t + 10) / 6),
                0.0005
            )),
        ];
        Finding finding = TemperatureFit.Fit(points, -10).Findings.Single(f => f.Code == "temperature-range-narrow");
        Assert.StartsWith(
            "The temperatures span only 6 °C, so predictions outside −12 to −6 °C are unsafe;",
            finding.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void APointWithoutUncertaintyIsRefusedByName() =>
        Assert.Contains(
            "The point at -10 °C (rate 0.06 ± 0)",
            Assert.Throws<ArgumentException>(() => TemperatureFit.Fit([new(-10, 0.06, 0)], -10)).Message,
            StringComparison.Ordinal
        );
}
