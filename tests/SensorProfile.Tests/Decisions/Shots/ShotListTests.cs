using SensorProfile.Decisions.Shots;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.NoiseModel;

namespace SensorProfile.Tests.Decisions.Shots;

public class ShotListTests
{
    [Theory]
    [InlineData(60)]
    [InlineData(120)]
    [InlineData(240)]
    [InlineData(480)]
    public void FitsTheTimeAndMeasuresEverything(double minutes)
    {
        ShotListAnswer answer = ShotList.Find(new ShotQuestion { Minutes = minutes });
        Assert.True(answer.Quantities["totalTime"]!.Value <= 60 * minutes);
        Assert.True(
            answer.Shots.Where(s => s.Kind == FrameKind.Bias).Sum(s => s.Frames)
                >= MissingMeasurements.BiasForPixelNoise
        );
        Assert.True(answer.Shots.Count(s => s.Kind == FrameKind.Flat) >= MissingMeasurements.FlatLevels);
        var darks = answer.Shots.Where(s => s.Kind == FrameKind.Dark).GroupBy(s => s.Temperature).ToList();
        Assert.True(darks.Count >= MissingMeasurements.Temperatures);
        Assert.All(darks, d =>
            Assert.True(d.Count() >= MissingMeasurements.DarkExposures && d.All(s => s.Frames >= 2))
        );
    }

    [Fact] // a survey of the frames on the list finds nothing missing
    public void NothingIsMissingAfterwards()
    {
        ShotListAnswer answer = ShotList.Find(new ShotQuestion());
        Inventory taken = Sets.Inventory([
            .. answer.Shots.Select(
                (s, i) =>
                    Sets.Of(
                        s.Kind,
                        s.Frames,
                        s.Exposure ?? (s.Kind == FrameKind.Flat ? 0.01 * (i + 1) : 0),
                        s.Temperature ?? -10
                    )
            ),
        ]);
        Assert.Empty(MissingMeasurements.Find(taken));
        Assert.Empty(ShotList.Find(new ShotQuestion { Existing = taken }).Shots);
    }

    [Fact]
    public void DarksReachTheLightsWhenTheTimeAllows() =>
        Assert.Equal(300, ShotList.Find(new ShotQuestion { Minutes = 90 }).Shots.Max(s => s.Exposure));

    [Fact]
    public void TooLittleTimeIsRefused()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => ShotList.Find(new ShotQuestion { Minutes = 5 }));
        Assert.Equal(RefusalKind.CannotTell, refused.Kind);
        Assert.StartsWith(
            "The shortest session that measures everything takes ",
            refused.Message,
            StringComparison.Ordinal
        );
        Assert.Contains("5 min are too few", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ATimeOfNothingIsABadArgument()
    {
        var refused = Assert.Throws<DecisionRefusedException>(() => ShotList.Find(new ShotQuestion { Minutes = 0 }));
        Assert.Equal(
            (RefusalKind.BadArgument, "The time must be a number above 0 min, not 0."),
            (refused.Kind, refused.Message)
        );
    }

    [Fact]
    public void WhatNoCameraDoesIsABadArgument()
    {
        foreach (
            ShotQuestion wrong in new[]
            {
                new ShotQuestion { LongestExposureSeconds = 86_401 },
                new ShotQuestion { MaximumDifference = 121 },
                new ShotQuestion { MaximumDifference = 3 },
                new ShotQuestion { AmbientCelsius = double.NaN },
            }
        )
            Assert.Equal(
                RefusalKind.BadArgument,
                Assert.Throws<DecisionRefusedException>(() => ShotList.Find(wrong)).Kind
            );
    }

    [Fact]
    public void ACooledListStaysWithinTheCooler()
    {
        ShotListAnswer answer = ShotList.Find(
            new ShotQuestion
            {
                AmbientCelsius = 20,
                MaximumDifference = 35,
                Margin = 3,
            }
        );
        Assert.Equal(-12, answer.Shots.Min(s => s.Temperature));
        Assert.True(answer.Shots.Max(s => s.Temperature) <= 20);
        Assert.True(answer.Cooled);
    }

    [Fact]
    public void AnUncooledListSaysHowToReachItsTemperatures()
    {
        ShotListAnswer answer = ShotList.Find(
            new ShotQuestion
            {
                Cooled = false,
                AmbientCelsius = 4,
                Minutes = 120,
            }
        );
        Assert.Contains(answer.Shots, s => s.Purpose == ShotPurpose.OutsideAtNight);
    }

    // two temperatures close together: a far one shrinks the doubling temperature most, and more bias frames the read
    // noise
    [Fact]
    public void TheBestAdditionIsTheOneThatShrinksMost()
    {
        Inventory inventory = Sets.Inventory(
            Sets.Of(FrameKind.Bias, 32, 0, -10),
            Sets.Of(FrameKind.Flat, 20, 1, -10),
            Sets.Of(FrameKind.Dark, 4, 30, -2),
            Sets.Of(FrameKind.Dark, 4, 300, -2),
            Sets.Of(FrameKind.Dark, 4, 30, 2),
            Sets.Of(FrameKind.Dark, 4, 300, 2)
        );
        ShotListAnswer answer = ShotList.Find(new ShotQuestion { Existing = inventory, AmbientCelsius = 15 });
        ShotAddition best = answer.Additions[0];
        Assert.Equal("doublingTemperature", best.Quantity);
        Assert.Equal(15, best.What.Temperature);
        ShotAddition bias = answer.Additions.First(a => a.Quantity == "readNoise");
        Assert.Equal(1 - Math.Sqrt(31.0 / 47), bias.Reduction, 1e-12);
    }

    [Fact] // one temperature: a second one makes the law measurable at all
    public void ASecondTemperatureMakesTheLawMeasurable()
    {
        Inventory inventory = Sets.Inventory(
            Sets.Of(FrameKind.Bias, 32, 0, -10),
            Sets.Of(FrameKind.Dark, 4, 30, -2),
            Sets.Of(FrameKind.Dark, 4, 300, -2)
        );
        Assert.Contains(ShotList.Find(new ShotQuestion { Existing = inventory }).Additions, a =>
            a is { Quantity: "doublingTemperature", Reduction: 1 }
        );
    }

    // a thermometer never reads whole degrees: sets 0.02 °C apart are one temperature, and one that is as good as
    // reachable is not offered again
    [Fact]
    public void DarksOfAboutOneTemperatureAreOneLine()
    {
        Inventory inventory = Sets.Inventory(
            Sets.Of(FrameKind.Dark, 4, 30, -10.49),
            Sets.Of(FrameKind.Dark, 4, 300, -10.51),
            Sets.Of(FrameKind.Dark, 4, 30, 14.97),
            Sets.Of(FrameKind.Dark, 4, 300, 15.02)
        );
        ShotAddition[] darks =
        [
            .. ShotList
                .Find(new ShotQuestion { Existing = inventory, AmbientCelsius = 15 })
                .Additions.Where(a => a.What.Kind == FrameKind.Dark),
        ];
        Assert.Equal([-17, -10.5, 15], darks.Select(a => a.What.Temperature!.Value).Distinct().Order());
        Assert.Equal(darks.Length, darks.Select(a => (a.What, a.Quantity)).Distinct().Count());
    }
}
