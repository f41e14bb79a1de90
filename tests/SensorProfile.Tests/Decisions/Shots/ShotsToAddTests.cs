using SensorProfile.Decisions.Shots;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel;

namespace SensorProfile.Tests.Decisions.Shots;

/// <summary>The shot list beside frames that exist.</summary>
public class ShotsToAddTests
{
    // temperatures and exposures that no fresh list would choose
    private static readonly double[] odd = [-18.3, -7.1, 1.9];

    [Fact]
    public void ACompleteSessionOfOtherTemperaturesLacksNothing()
    {
        ShotListAnswer answer = Ask(Complete());
        Assert.Empty(answer.Shots);
        Assert.NotEmpty(answer.Additions);
        ExistingFrames there = answer.Existing!;
        Assert.Equal((20, 8, 3, false), (there.Bias, there.FlatPairs, there.DarkExposures, there.KindsUnknown));
        Assert.Equal([-18.5, -7, 2], there.DarkTemperatures);
        Assert.All(answer.Additions, a =>
            Assert.True(a.After < a.Before && Math.Abs(1 - a.After!.Value / a.Before!.Value - a.Reduction) < 1e-12)
        );
        Assert.Equal(answer.Additions.Count, answer.Additions.Select(a => (a.What, a.Quantity)).Distinct().Count());
    }

    [Theory] // what a survey calls lacking is asked for, at the temperatures that exist, and nothing lacks afterwards
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(1, 2)]
    [InlineData(2, 0)]
    [InlineData(2, 1)]
    [InlineData(3, 2)]
    public void WhatLacksIsCompletedWhereTheFramesStand(int temperatures, int exposures)
    {
        FrameSet[] have =
        [
            Sets.Of(FrameKind.Bias, 4, 0, -10),
            .. Flats(3),
            .. odd.Take(temperatures)
                .SelectMany(t =>
                    new[] { 33.0, 120, 240 }.Take(exposures).Select(s => Sets.Of(FrameKind.Dark, 4, s, t))
                ),
        ];
        ShotListAnswer answer = Ask(have);
        Inventory after = Sets.Inventory([
            .. have,
            .. answer.Shots.Select(
                (s, i) =>
                    Sets.Of(
                        s.Kind,
                        s.Frames,
                        s.Exposure ?? (s.Kind == FrameKind.Flat ? 100 + i : 0),
                        s.Temperature ?? -10
                    )
            ),
        ]);
        Assert.Empty(MissingMeasurements.Find(after));
        double[] asked = [.. answer.Shots.Select(s => s.Temperature).OfType<double>().Distinct()];
        Assert.Equal(
            3,
            asked.Concat(odd.Take(exposures > 0 ? temperatures : 0)).DistinctBy(t => Math.Round(t, 1)).Count()
        );
    }

    [Fact] // seen: 1.2 GB for frames of 320 × 240 px, of which none said its kind
    public void FramesWithoutAKindSayTheirSizeAllTheSame()
    {
        FrameSet[] sets = Flats(1);
        double Space(IEnumerable<FrameSet> of) =>
            ShotList.Find(new ShotQuestion { Existing = Sets.Inventory([.. of]) }).Quantities["diskSpace"]!.Value;
        double flats = Space(sets),
            unknown = Space(sets.Select(s => s with { Kind = FrameKind.Unknown, Width = 320, Height = 240 }));
        Assert.True(unknown < 0.1 * flats, $"{unknown} {flats}");
    }

    [Fact]
    public void InTooLittleTimeTheRestIsNamed()
    {
        ShotListAnswer answer = ShotList.Find(new ShotQuestion { Existing = Sets.Inventory(Flats(1)), Minutes = 45 });
        Assert.True(answer.Quantities["totalTime"]!.Value <= 45 * 60);
        Assert.Contains(answer.Findings, f =>
            f.Code == "time-too-short"
            && f.Message.StartsWith(
                "Not everything fits into 45 min: 24 more frames (78 min)",
                StringComparison.Ordinal
            )
        );
        Assert.Equal(
            RefusalKind.CannotTell,
            Assert
                .Throws<DecisionRefusedException>(() =>
                    ShotList.Find(new ShotQuestion { Existing = Sets.Inventory(Flats(1)), Minutes = 0.1 })
                )
                .Kind
        );
    }

    // 8 pairs, 5.6 of them below 70 % of the top, of 9 million pixels; 20 bias frames; σ/√Σn(t − t̄)² with 4 frames of
    // 33, 120 and 240 s each
    [Fact]
    public void TheExpectedUncertaintiesAreThoseOfTheDesign()
    {
        IReadOnlyList<ShotExpectation> expected = Ask(Complete()).Expected;
        Assert.Equal(100 / Math.Sqrt(2 * 19), Now("readNoise"), 1e-12);
        Assert.Equal(100 * 2 * Math.Sqrt(2 / 9e6 / (0.7 * 8)), Now("gain"), 1e-12);
        double mean = (33 + 120 + 240) / 3.0,
            spread = new[] { 33.0, 120, 240 }.Sum(t => 4 * (t - mean) * (t - mean));
        Assert.Equal(0.3 / Math.Sqrt(spread), Now("darkCurrent"), 1e-12);
        Assert.InRange(Now("doublingTemperature"), 0.05, 1);
        double Now(string name) => expected.Single(e => e.Quantity == name).Now!.Value;
    }

    // four times the pairs halve the slope's uncertainty at every temperature; only the 1 % per temperature stays
    [Fact]
    public void AnAdditionGivesWhatTheDesignWithItGives()
    {
        ShotListAnswer before = Ask(Complete());
        ShotAddition bias = before.Additions.Single(a => a.Quantity == "readNoise");
        ShotListAnswer after = Ask([
            .. Complete().Where(s => s.Kind != FrameKind.Bias),
            Sets.Of(FrameKind.Bias, 36, 0, -10),
        ]);
        Assert.Equal(after.Expected.Single(e => e.Quantity == "readNoise").Now!.Value, bias.After!.Value, 1e-12);
    }

    [Fact]
    public void OtherSettingsAreNotPooled()
    {
        FrameSet[] other = [Sets.Of(FrameKind.Bias, 4, 0, -10, gain: 0), Sets.Of(FrameKind.Dark, 2, 33, -10, gain: 0)];
        ShotListAnswer answer = Ask([.. Complete(), .. other]);
        Assert.Empty(answer.Shots);
        Assert.Contains(answer.Findings, f =>
            f.Code == "several-settings" && f.Message.Contains("gain 100, offset 30", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void DarksAsLongAsStatedLightsAreAskedFor()
    {
        ShotListAnswer answer = ShotList.Find(
            new ShotQuestion { Existing = Sets.Inventory(Complete()), LongestExposureSeconds = 600 }
        );
        PlannedShot shot = Assert.Single(answer.Shots);
        Assert.Equal((FrameKind.Dark, 600, -7.1), (shot.Kind, shot.Exposure, Math.Round(shot.Temperature!.Value, 1)));
    }

    [Fact]
    public void FramesWithoutAKindAreSaidFirst()
    {
        ShotListAnswer answer = Ask([Sets.Of(FrameKind.Unknown, 12, 30, -10)]);
        Assert.True(answer.Existing!.KindsUnknown);
        Finding said = Assert.Single(answer.Findings, f => f.Code == "kinds-not-known");
        Assert.StartsWith("12 of the 12 frames ", said.Message, StringComparison.Ordinal);
    }

    // Two temperatures are there; the third was the one farthest away, where the cold sensor shows next to nothing.
    [Fact]
    public void TheNextTemperatureIsTheOneThatTellsMost()
    {
        FrameSet[] have =
        [
            .. Complete().Where(s => s.Kind != FrameKind.Dark),
            .. new[] { -1.0, 4 }.SelectMany(t =>
                new[] { 30.0, 100, 300 }.Select(s => Sets.Of(FrameKind.Dark, 4, s, t))
            ),
        ];
        ShotListAnswer answer = Ask(have);
        double planned = answer.Expected.Single(e => e.Quantity == "doublingTemperature").WithShots!.Value;
        double[] others =
        [
            .. answer
                .Additions.Where(a =>
                    a.Quantity == "doublingTemperature" && a.What is { Kind: FrameKind.Dark, Frames: 12 }
                )
                .Select(a => a.After!.Value),
        ];
        Assert.NotEmpty(others);
        Assert.All(others, o => Assert.True(planned <= o * (1 + 1e-9), $"{planned} against {o}"));
    }

    // An uncooled sensor is warmer than the room: "in a room of about 31 °C" took the one for the other.
    [Fact]
    public void ASensorsTemperatureIsNotThatOfTheRoom()
    {
        ShotListAnswer answer = ShotList.Find(
            new ShotQuestion
            {
                Cooled = false,
                Existing = Sets.Inventory(
                    Sets.Of(FrameKind.Bias, 20, 0, 31),
                    Sets.Of(FrameKind.Dark, 4, 30, 31),
                    Sets.Of(FrameKind.Dark, 4, 300, 31)
                ),
            }
        );
        PlannedShot there = Assert.Single(answer.Shots, s => s is { Kind: FrameKind.Dark, Temperature: 31 });
        Assert.Equal(ShotPurpose.AsBefore, there.Purpose);
    }

    private static FrameSet[] Complete() =>
        [
            Sets.Of(FrameKind.Bias, 20, 0, -10),
            .. Flats(8),
            .. odd.SelectMany(t => new[] { 33.0, 120, 240 }.Select(s => Sets.Of(FrameKind.Dark, 4, s, t))),
        ];

    private static FrameSet[] Flats(int levels) =>
        [.. Enumerable.Range(1, levels).Select(i => Sets.Of(FrameKind.Flat, 2, i, -10))];

    private static ShotListAnswer Ask(FrameSet[] sets) =>
        ShotList.Find(new ShotQuestion { Existing = Sets.Inventory(sets) });
}
