using SensorProfile.Drift.Archive;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Drift.OverTheYears;

public sealed class DriftComparisonTests
{
    private static readonly TarnYears Tarn = new();

    /// <summary>
    /// One colour's gain that drifts by 4 % at 0.4 % each (z = 7) is named by its colour; the others stay.
    /// </summary>
    [Fact]
    public void EveryColourIsComparedOnItsOwn()
    {
        var random = new Random(8);
        ProfileOnDisk Coloured(int year, double red)
        {
            ProfileOnDisk profile = new TarnYears().Measure(year, random);
            ChannelProfile Channel(string name, double gain) =>
                new()
                {
                    Name = name,
                    Gain = new Measurement(gain, 0.004 * gain, "e-/ADU", 100, "drawn"),
                    ReadNoise = new Measurement(1.6, 0.01, "e-", 100, "drawn"),
                };
            ModeProfile mode = profile.Profile.Modes[0] with
            {
                Channels = [Channel("R", red), Channel("G1", 0.8), Channel("G2", 0.8), Channel("B", 0.8)],
            };
            return profile with { Profile = profile.Profile with { Modes = [mode] } };
        }
        DriftAnswer answer = DriftComparison.Run([Coloured(2031, 0.8), Coloured(2032, 0.832)]);
        DriftChange red = answer.Changes.Single(c => c.Quantity == "gainOfR");
        Assert.True(red.Changed);
        Assert.Equal(7.07, red.Z, 0.2);
        Assert.All(answer.Changes.Where(c => c.Quantity is "gainOfG1" or "gainOfB" or "readNoiseOfR"), c =>
            Assert.False(c.Changed)
        );
        Assert.Equal(0.04, red.Change.Value / red.From.Value, 0.005);
    }

    [Fact]
    public void ARiseOfTheDarkCurrentIsNamedFirst()
    {
        DriftAnswer answer = Run(Tarn, Tarn with { DarkRate = 0.0135 });
        Assert.Equal(DriftVerdict.Changed, answer.Outcome);
        Assert.Equal(1, answer.Years, 0.01);
        Assert.Equal(["darkRate"], answer.Changes.Where(c => c.Changed).Select(c => c.Quantity));
    }

    [Fact]
    public void WhatWouldHaveBeenSeenStandsInAnUnchangedAnswer()
    {
        DriftAnswer answer = Run(Tarn, Tarn);
        Assert.Equal(DriftVerdict.Unchanged, answer.Outcome);
        Assert.All(answer.Changes, c => Assert.True(c.Detectable > 0 && !c.Changed));
        Assert.All(answer.Changes, c => Assert.Equal(c.To.Value - c.From.Value, c.Change.Value, 12));
    }

    [Fact] // seen: "holds no temperature law, take darks", of a profile whose law is in ADU for want of flats
    public void ALawInAduLacksTheGainAlone()
    {
        var random = new Random(4);
        ProfileOnDisk then = Tarn.Measure(2031, random),
            now = Tarn.Measure(2032, random);
        ModeProfile mode = now.Profile.Modes[0];
        now = now with
        {
            Profile = now.Profile with
            {
                Modes = [mode with { Gain = null, DarkCurrent = null, DarkCurrentAdu = mode.DarkCurrent }],
            },
        };
        Finding said = DriftComparison.Run([then, now]).Findings.Single(f => f.Code == "dark-current-not-compared");
        Assert.EndsWith(
            "holds no dark current in electrons, since the gain is unknown. Flat pairs at the same settings give it.",
            said.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnotherCameraIsNamedAndTheRestIsCompared()
    {
        var random = new Random(1);
        ProfileOnDisk other = Tarn.Measure(2032, random);
        other = other with
        {
            File = "fell/profile.json",
            Profile = other.Profile with
            {
                Camera = other.Profile.Camera with { Name = "Fell-24C", ColourFilter = "RGGB" },
            },
        };
        DriftAnswer answer = DriftComparison.Run([Tarn.Measure(2031, random), other, Tarn.Measure(2033, random)]);
        RejectedFile refused = Assert.Single(answer.Refused);
        Assert.Equal(
            "It is from another camera or another kind of frame: camera Fell-24C instead of Tarn-9M, colour filter "
                + "RGGB instead of none.",
            refused.Reason
        );
        Assert.Equal(["2031/profile.json", "2033/profile.json"], answer.Compared);
        Assert.NotEmpty(answer.Changes);
    }

    [Fact]
    public void OtherSettingsAreNotCompared()
    {
        var random = new Random(1);
        ProfileOnDisk now = Tarn.Measure(2032, random);
        now = now with
        {
            Profile = now.Profile with
            {
                Modes =
                [
                    now.Profile.Modes[0] with
                    {
                        Settings = new ModeSettings { Gain = 100, Offset = 50 },
                    },
                ],
            },
        };
        DriftAnswer answer = DriftComparison.Run([Tarn.Measure(2031, random), now]);
        Assert.Equal(DriftVerdict.CannotTell, answer.Outcome);
        Assert.Contains(answer.Findings, f =>
            f.Code == "mode-alone"
            && f.Message.Contains("offset 50", StringComparison.Ordinal)
            && f.Message.Contains("offset 30", StringComparison.Ordinal)
        );
    }

    [Fact] // frames saved with 8 bits: "the saturation level is up by 60 000 ADU", said drift
    public void FramesThatWereNotRawAreNoComparison()
    {
        var random = new Random(1);
        ProfileOnDisk spoilt = Tarn.Measure(2032, random);
        spoilt = spoilt with
        {
            Profile = spoilt.Profile with
            {
                Modes = [spoilt.Profile.Modes[0] with { Gain = null }],
                Findings = [new Finding("response-not-raw", Severity.Refusal, "Not raw.")],
            },
        };
        DriftAnswer answer = DriftComparison.Run([Tarn.Measure(2031, random), spoilt]);
        Assert.Equal(DriftVerdict.CannotTell, answer.Outcome);
        Assert.Contains("not raw", Assert.Single(answer.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void TheSameFramesTwiceAreNoComparison()
    {
        ProfileOnDisk once = Tarn.Measure(2031, new Random(1));
        once = once with { Profile = once.Profile with { Frames = once.Profile.Frames with { InputDigest = "ab12" } } };
        DriftAnswer answer = DriftComparison.Run([once, once with { File = "copy/profile.json" }]);
        Assert.Equal(DriftVerdict.CannotTell, answer.Outcome);
        Assert.Contains("same frames", Assert.Single(answer.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void DarkCurrentsWithoutACommonTemperatureAreNotCompared()
    {
        var random = new Random(1);
        ProfileOnDisk now = Tarn.Measure(2032, random);
        ModeProfile mode = now.Profile.Modes[0];
        now = now with
        {
            Profile = now.Profile with
            {
                Modes =
                [
                    mode with
                    {
                        DarkCurrent = mode.DarkCurrent! with { MeasuredRange = [8, 20], ReferenceTemperature = 15 },
                    },
                ],
            },
        };
        DriftAnswer answer = DriftComparison.Run([Tarn.Measure(2031, random), now]);
        Assert.DoesNotContain(answer.Changes, c => c.Quantity == "darkRate");
        Assert.Contains(answer.Findings, f => f.Code == "dark-ranges-apart");
    }

    [Fact]
    public void AGainThatMovesEverythingPointsToTheFlats()
    {
        DriftAnswer answer = Run(
            Tarn,
            Tarn with
            {
                Gain = 0.88,
                ReadNoise = 1.76,
                FullWell = 52800,
                DarkRate = 0.0132,
            }
        );
        Assert.Contains(answer.Findings, f => f.Code == "gain-moves-all");
        Assert.DoesNotContain(Run(Tarn, Tarn with { DarkRate = 0.0132 }).Findings, f => f.Code == "gain-moves-all");
    }

    /// <summary>20 % growth a year from 0.012 e-/px/s: the date lies ahead, and the band around it holds it.</summary>
    [Fact]
    public void TheDateAtWhichTheLibraryNoLongerServesIsGivenWithItsBand()
    {
        var random = new Random(3);
        DriftAnswer answer = DriftComparison.Run([
            .. Enumerable
                .Range(0, 4)
                .Select(y => (Tarn with { DarkRate = 0.012 * (1 + 0.2 * y) }).Measure(2031 + y, random)),
        ]);
        LibraryForecast library = Assert.Single(answer.Library);
        Assert.NotNull(library.DateUtc);
        Assert.True(
            library.EarliestUtc < library.DateUtc && (library.LatestUtc is null || library.LatestUtc > library.DateUtc)
        );
        Assert.True(library.DateUtc > new DateTimeOffset(2034, 10, 14, 0, 0, 0, TimeSpan.Zero));
        Assert.NotNull(library.Cause);
    }

    private static DriftAnswer Run(TarnYears before, TarnYears now)
    {
        var random = new Random(11);
        return DriftComparison.Run([before.Measure(2031, random), now.Measure(2032, random)]);
    }
}
