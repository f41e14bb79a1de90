using SensorProfile.Drift.OverTheYears;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Years;

namespace SensorProfile.Reporting.Tests.Answers.Years;

/// <summary>A comparison over the years in words.</summary>
public class DriftDocumentTests
{
    private static readonly DateTimeOffset _first = new(2031, 10, 14, 0, 0, 0, TimeSpan.Zero);

    [Fact]
    public void ARiseOfTheDarkCurrentIsNamedFirst()
    {
        AnswerDocument said = DriftDocument.Compose(
            Answer(DriftVerdict.Changed, Change("gain", 0.8, 0.84, true), Change("darkRate", 0.012, 0.0144, true)) with
            {
                Retake = [RetakeKind.Darks, RetakeKind.BiasFrames],
            }
        );
        Assert.Equal(
            "The sensor has changed in 1 year: the dark current is up by 20 %, the gain is up by 5 %.",
            said.Sentence
        );
        Assert.StartsWith(
            "2 of the 2 values compared moved by more than their errors can explain.",
            said.Reason,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Retake the darks and bias frames. Darks from 2031-10 contain another dark current.",
            said.Tables[0].Rows[0][1],
            StringComparison.Ordinal
        );
        Assert.Contains("the camera has changed", Assert.Single(said.RulesOfThumb), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatWouldHaveBeenSeenStandsInAnUnchangedAnswer()
    {
        AnswerDocument said = DriftDocument.Compose(
            Answer(DriftVerdict.Unchanged, Change("darkRate", 0.012, 0.0121, false))
        );
        Assert.Equal(
            "No change beyond the errors in 1 year; a change in dark current of 10 % would have been seen.",
            said.Sentence
        );
        Assert.StartsWith(
            "The one value compared did not move by more than its error can explain.",
            said.Reason,
            StringComparison.Ordinal
        );
    }

    [Fact] // seen: "the saturation level is down by −60 ± 18 ADU"
    public void DownIsSaidOnce()
    {
        string said = DriftDocument
            .Compose(Answer(DriftVerdict.Changed, Change("saturationLevel", 60226, 60166, true)))
            .Sentence;
        Assert.Contains("the saturation level is down by 60 ", said, StringComparison.Ordinal);
        Assert.DoesNotContain("−", said, StringComparison.Ordinal);
    }

    [Fact] // seen: two profiles without darks, and "Nothing to retake: darks from 2031-10 still hold"
    public void WhatWasNotComparedIsNotSaidToHold()
    {
        AnswerDocument said = DriftDocument.Compose(
            Answer(DriftVerdict.Unchanged, Change("biasLevel", 600, 600, false), Change("gain", 0.8, 0.8, false))
        );
        Assert.Equal(
            "No change beyond the errors in 1 year; the dark current and the hot pixels were not compared.",
            said.Sentence
        );
        Assert.StartsWith(
            "Cannot tell from these profiles whether darks from 2031-10 still hold",
            said.Tables[0].Rows[0][1],
            StringComparison.Ordinal
        );
    }

    [Theory] // set to −10 °C, a sensor that is 0.98 °C colder than its probe says wants −9.02 °C
    [InlineData(-0.98, "higher", "colder")]
    [InlineData(0.98, "lower", "warmer")]
    public void AProbeThatDriftedRulesHeadlineAndAdvice(double celsius, string way, string felt)
    {
        AnswerDocument said = DriftDocument.Compose(
            Answer(DriftVerdict.Unchanged, Change("darkRate", 0.012, 0.012, false)) with
            {
                Probes = [Probe(ProbeVerdict.Probe, Of(celsius, 0.1, "°C"), null)],
            }
        );
        Assert.StartsWith(
            $"Keep the darks and set the cooler 0.98 °C {way}: the temperature probe has drifted by 0.98 ± 0.10 °C",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            $"Keep the darks from 2031-10: set the cooler 0.98 °C {way}",
            said.Tables[0].Rows[0][1],
            StringComparison.Ordinal
        );
        Finding probe = Assert.Single(said.Findings, f => f.Code == "probe-or-ageing");
        Assert.Contains($"0.98 °C {felt} at the same reading", probe.Message, StringComparison.Ordinal);
        Assert.EndsWith(probe.Message, said.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(nameof(ProbeVerdict.CannotTell), nameof(ProbeGap.NoMaps), "without the maps of both profiles")]
    [InlineData(nameof(ProbeVerdict.CannotTell), nameof(ProbeGap.FewHotPixels), "too few hot pixels")]
    [InlineData(nameof(ProbeVerdict.CannotTell), null, "fit both a probe that drifted and one that did not")]
    [InlineData(nameof(ProbeVerdict.None), nameof(ProbeGap.NoMaps), "The dark current has not changed")]
    [InlineData(nameof(ProbeVerdict.None), null, "Neither the dark current nor the temperature probe")]
    [InlineData(nameof(ProbeVerdict.Ageing), null, "the temperature probe did not")]
    [InlineData(
        nameof(ProbeVerdict.Both),
        null,
        "most likely the temperature probe drifted and the dark current changed"
    )]
    public void EveryVerdictOnTheProbeHasItsWords(string verdict, string? gap, string said) =>
        Assert.Contains(
            said,
            ProbeWords.Phrase(
                Probe(
                    Enum.Parse<ProbeVerdict>(verdict),
                    gap is null ? Of(0.5, 0.1, "°C") : null,
                    gap is null ? null : Enum.Parse<ProbeGap>(gap)
                )
            ),
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(nameof(DriftGap.FewProfiles), "two profiles of one camera are needed")]
    [InlineData(nameof(DriftGap.NoCommonSettings), "no two profiles were taken with the same settings")]
    [InlineData(nameof(DriftGap.NoCommonQuantity), "the profiles have no quantity in common")]
    public void WhatLacksIsSaid(string gap, string lacking)
    {
        AnswerDocument said = DriftDocument.Compose(
            new DriftAnswer
            {
                Outcome = DriftVerdict.CannotTell,
                Gap = Enum.Parse<DriftGap>(gap),
                Compared = ["2031/profile.json"],
                Dates = [_first],
            }
        );
        Assert.Equal($"Cannot tell whether the sensor has changed: {lacking}.", said.Sentence);
        Assert.Equal(("cannot-tell", true), (said.Verdict, said.CannotTell));
        Assert.NotEmpty(said.Reason);
    }

    [Fact]
    public void TwoSensorsAreNamed()
    {
        AnswerDocument said = DriftDocument.Compose(
            new DriftAnswer
            {
                Outcome = DriftVerdict.AnotherSensor,
                Compared = ["2031/profile.json"],
                OtherSensors = [new RejectedFile("2032/profile.json", "None of its hot pixels is there.")],
            }
        );
        Assert.StartsWith(
            "These are two sensors: the pixels of 2032/profile.json are not those of 2031/profile.json",
            said.Sentence,
            StringComparison.Ordinal
        );
        Assert.StartsWith("None of its hot pixels is there. Keep", said.Reason, StringComparison.Ordinal);
        Assert.Empty(said.RulesOfThumb);
    }

    [Fact]
    public void ALibraryIsSaidToServeUntilItsDate()
    {
        var forecast = new LibraryForecast(
            "gain 100",
            _first.AddYears(4),
            _first.AddYears(3),
            null,
            LibraryLimit.NewHotPixels,
            40,
            300,
            0.05
        );
        Assert.Equal(
            "If the trend continues, darks taken now cost a stack of 40 lights of 300 s more than the 5 % allowed from "
                + "2035-10 on (95 %: 2034-10 to open end); new hot pixels, missing from old darks, set the limit.",
            LibraryWords.Phrase(forecast)
        );
    }

    [Theory]
    [InlineData(0.5, DriftVerdict.Unchanged, "younger than a year")]
    [InlineData(2, DriftVerdict.Unchanged, "a reason to check")] // age alone gives "check", never "reject"
    [InlineData(2, DriftVerdict.Changed, "the camera has changed")]
    public void TheRuleOfThumbIsJudgedByTheEvidence(double years, DriftVerdict verdict, string said) =>
        Assert.Contains(
            said,
            Assert.Single(DriftWords.RulesOfThumb(Answer(verdict) with { Years = years })),
            StringComparison.Ordinal
        );

    [Fact]
    public void ThePaceOfTheOnlyPublishedLibraryIsQuotedRight() // STScI TIR WFPC2 98-03: ×1.3 to ×1.8 in 2.75 years
    {
        Assert.Equal(1.10, Math.Pow(1.3, 1 / 2.75), 2);
        Assert.Equal(1.24, Math.Pow(1.8, 1 / 2.75), 2);
        Assert.Contains(
            "×1.10 to ×1.24 a year",
            Assert.Single(DriftWords.RulesOfThumb(Answer(DriftVerdict.Unchanged))),
            StringComparison.Ordinal
        );
    }

    private static DriftAnswer Answer(DriftVerdict verdict, params DriftChange[] changes) =>
        new()
        {
            Outcome = verdict,
            Years = 1,
            Significance = 0.05,
            Compared = ["2031/profile.json", "2032/profile.json"],
            Dates = [_first, _first.AddYears(1)],
            Changes = changes,
        };

    private static DriftChange Change(string quantity, double from, double to, bool changed) =>
        new(
            quantity,
            "gain 100",
            Of(from, 0.01 * from, "e-"),
            Of(to, 0.01 * from, "e-"),
            Of(to - from, 0.01 * from, "e-"),
            (to - from) / (0.01 * from),
            changed ? 0.001 : 0.5,
            changed ? 0.002 : 1,
            changed,
            0.1 * from
        );

    private static ProbeOrAgeing Probe(ProbeVerdict verdict, Measurement? hot, ProbeGap? gap) =>
        new("gain 100", verdict, Of(0.5, 0.1, "°C"), hot, hot is null ? 0 : 200, gap);

    private static Measurement Of(double value, double uncertainty, string unit) =>
        new(value, uncertainty, unit, 1, "stated");
}
