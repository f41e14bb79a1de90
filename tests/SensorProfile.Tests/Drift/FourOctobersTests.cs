using SensorProfile.Drift.OverTheYears;
using SensorProfile.Drift.Patches;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Drift;

/// <summary>
/// The club's Tarn-9M over four Octobers, from raw frames: characterised each year, maps beside the profiles.
/// </summary>
public sealed class FourOctobersTests(Octobers octobers, ITestOutputHelper output) : IClassFixture<Octobers>
{
    /// <summary>
    /// The demo camera ages by 4 % dark current a year and its probe by 0.1 °C, and from the first year on a patch of
    /// hot pixels grows around (52, 432) by 9 px a year: after three years
    /// its radius is 27 px with a quarter of its pixels hot, about 530 of them more than 0.05 e-/px/s above the typical
    /// pixel, 360 more than 0.2 (counted in the maps of truth).
    /// </summary>
    [Fact]
    public void TheDarkCurrentIsUpAndThePatchNearTheCornerIsOutlined()
    {
        DriftAnswer answer = DriftComparison.Run([.. Enumerable.Range(0, 4).Select(year => octobers.Of(year))]);
        Report(answer);
        Assert.Equal(DriftVerdict.Changed, answer.Outcome);
        DriftChange dark = answer.Changes.Single(c => c.Quantity == "darkRate");
        Assert.True(dark.Change.Value > 0);
        // the cooler holds the probe, so the die runs 0.3 °C colder: that is taken out, and the ageing is left
        double truth = 0.012 * (Math.Pow(1.04, 3) - 1);
        Assert.InRange((dark.Change.Value - truth) / dark.Change.StandardUncertainty, -3.5, 3.5);
        DriftChange byPixel = answer.Changes.Single(c => c.Quantity == "darkRateByPixel");
        Assert.True(byPixel.Changed);
        Assert.True(answer.Trends.Single(t => t.Quantity == "darkRateByPixel").Changed);
        Assert.InRange(
            (byPixel.Change.Value / byPixel.From.Value - truth / 0.012)
                * byPixel.From.Value
                / byPixel.Change.StandardUncertainty,
            -3.5,
            3.5
        );
        Assert.Equal(3, answer.Years, 0.01);
        Assert.Equal([RetakeKind.Darks], answer.Retake);
        GrowingPatch patch = answer.HotPixels!.Patches[0];
        Assert.InRange(double.Hypot(patch.X - 52, patch.Y - 432), 0, 5);
        Assert.InRange(patch.Radius, 20, 30);
        Assert.Equal("near the lower left corner", patch.Where);
        Assert.All(patch.Outline, p => Assert.InRange(double.Hypot(p.X - 52, p.Y - 432), 10, 36));
        ProbeOrAgeing probe = answer.Probes.Single();
        Assert.Equal(ProbeVerdict.Both, probe.Verdict);
        Assert.InRange((probe.StepOfHotPixels!.Value + 0.3) / probe.StepOfHotPixels.StandardUncertainty, -3.5, 3.5);
    }

    /// <summary>
    /// The same when each year chose another reference temperature: the maps are brought together by the pixels' own
    /// laws.
    /// </summary>
    [Fact]
    public void MapsOfAnotherReferenceTemperatureAreComparedAllTheSame()
    {
        DriftAnswer answer = DriftComparison.Run([octobers.Of(0), octobers.Of(3, reference: -6)]);
        Report(answer);
        Assert.Contains(answer.Findings, f => f.Code == "maps-moved-in-temperature");
        DriftChange byPixel = answer.Changes.Single(c => c.Quantity == "darkRateByPixel");
        // the step of 4 °C leaves its doubt in the probe's: found or not, the change is stated accordingly
        bool taken = answer.Probes.Single().Verdict == ProbeVerdict.Both;
        double truth = Math.Pow(1.04, 3) * (taken ? 1 : Math.Pow(2, -0.3 / 6.1)) - 1;
        Assert.InRange(
            (byPixel.Change.Value / byPixel.From.Value - truth)
                * byPixel.From.Value
                / byPixel.Change.StandardUncertainty,
            -3.5,
            3.5
        );
        GrowingPatch patch = answer.HotPixels!.Patches[0];
        Assert.InRange(double.Hypot(patch.X - 52, patch.Y - 432), 0, 5);
        Assert.NotEqual(ProbeVerdict.Probe, answer.Probes.Single().Verdict);
    }

    /// <summary>Two nights of the same October: nothing has changed, from raw frames on.</summary>
    [Fact]
    public void TwoNightsOfOneYearShowNoChange()
    {
        DriftAnswer answer = DriftComparison.Run([octobers.Of(0), octobers.Of(0, night: 50)]);
        Report(answer);
        Assert.Equal(DriftVerdict.Unchanged, answer.Outcome);
        Assert.Empty(answer.HotPixels!.Patches);
        Assert.Equal(ProbeVerdict.None, answer.Probes.Single().Verdict);
    }

    private void Report(DriftAnswer answer)
    {
        output.WriteLine($"{answer.Outcome}: retake {string.Join(", ", answer.Retake)}");
        foreach (DriftChange c in answer.Changes)
            output.WriteLine(
                $"{c.Quantity}: {QuantityText.Of(c.From)} -> {QuantityText.Of(c.To)}, z {c.Z:F2}, p {c.AdjustedP:F4}"
            );
        foreach (DriftTrend t in answer.Trends)
            output.WriteLine($"{t.Quantity}: {QuantityText.Of(t.PerYear)}, z {t.Z:F2}, p {t.AdjustedP:F4}");
        output.WriteLine(
            $"kept {answer.HotPixels?.Kept}, new {answer.HotPixels?.New}, healed {answer.HotPixels?.Healed}, "
                + $"brighter {answer.HotPixels?.Brighter}, factor {QuantityText.Of(answer.HotPixels?.CommonFactor)}"
        );
        foreach (GrowingPatch p in answer.HotPixels?.Patches ?? [])
            output.WriteLine(
                $"patch {p.X}, {p.Y}, radius {p.Radius:F1}, {p.NewPixels} px, expected {p.Expected:F1}, p {p.P}"
            );
        foreach (Finding f in answer.Findings)
            output.WriteLine($"{f.Code}: {f.Message}");
        foreach (LibraryForecast l in answer.Library)
            output.WriteLine($"{l.DateUtc} ({l.EarliestUtc} to {l.LatestUtc}): {l.Cause}");
    }
}
