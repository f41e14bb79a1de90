using SensorProfile.Characterisation;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Raw;
using SensorProfile.Screening;

namespace SensorProfile.Tests.Frames.Survey;

/// <summary>Sessions of raw files: clocks and zones, ISO that changes, crop modes.</summary>
public sealed class RawSessionTests : IDisposable
{
    private static readonly TimeSpan summer = TimeSpan.FromHours(2),
        winter = TimeSpan.FromHours(1);

    private readonly RawFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>02:50 in summer time and 02:10 in winter time are 20 minutes apart.</summary>
    [Fact]
    public void WhereTheZoneChangesInTheNightTheOrderIsThatOfTheInstants()
    {
        Dark("1.dng", new DateTime(2031, 10, 26, 2, 30, 0), summer);
        Dark("2.dng", new DateTime(2031, 10, 26, 2, 50, 0), summer);
        Dark("3.dng", new DateTime(2031, 10, 26, 2, 10, 0), winter);
        Dark("4.dng", new DateTime(2031, 10, 26, 2, 30, 0), winter);
        Inventory inventory = Named();
        Assert.Equal(["1.dng", "2.dng", "3.dng", "4.dng"], Assert.Single(inventory.Sets).Frames.Select(f => f.Name));
        Assert.Equal(
            [20.0, 20, 20],
            inventory.Frames.Zip(inventory.Frames.Skip(1), (a, b) => (b.StartUtc - a.StartUtc)!.Value.TotalMinutes)
        );
    }

    /// <summary>Without a zone an hour set back at 3 o'clock is seen by nobody; the night stays one.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)] // the clock is wrong by a day
    public void WithoutAZoneOneNightStaysOneNight(int daysWrong)
    {
        DateTime evening = new DateTime(2031, 10, 25, 22, 0, 0).AddDays(daysWrong);
        for (int i = 0; i < 12; i++) // 22:00 to 02:30, an hour set back before the last two
            Dark($"{i:00}.dng", evening.AddMinutes((30 * i) - (i > 9 ? 55 : 0)), null);
        for (int i = 0; i < 4; i++)
            Dark($"next{i}.dng", evening.AddDays(1).AddMinutes(30 * i), null);
        Inventory inventory = Named();
        Assert.Equal([12, 4], inventory.Sets.Select(s => s.Frames.Count));
    }

    /// <summary>Without temperature, frames of another night must not be pooled; which night these are of is not
    /// known.</summary>
    [Fact]
    public void OfSeveralNightsFramesWithoutATimeAreKeptApart()
    {
        Dark("a1.dng", new DateTime(2031, 10, 14, 22, 0, 0), null);
        Dark("a2.dng", new DateTime(2031, 10, 14, 22, 10, 0), null);
        Dark("b1.dng", null, null);
        Assert.Equal(3, Assert.Single(Named().Sets).Frames.Count); // there is one night that it can be of
        Dark("c1.dng", new DateTime(2031, 10, 20, 22, 0, 0), null);
        IReadOnlyList<FrameSet> sets = Named().Sets;
        Assert.Equal(["a1.dng a2.dng", "b1.dng", "c1.dng"], sets.Select(Names).Order(StringComparer.Ordinal));
        Assert.Equal(3, NightRates.Split(sets).Count);
    }

    [Fact]
    public void DarksAtAnotherIsoThanBiasAndFlatsAreNamedWithWhatIsMissing()
    {
        for (int i = 0; i < 2; i++)
        {
            folder.Add($"bias{i}.dng", At(i, 0.001, 800));
            folder.Add($"flat{i}.dng", At(10 + i, 1, 800));
            folder.Add($"dark{i}.dng", At(20 + i, 120, 1600));
        }
        Finding finding = Assert.Single(Named().Findings, f => f.Code == FindingCodes.SettingChanges);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(
            "The ISO changes of Fell-24C: 800 in 4 frames, 1600 in 2 frames; frames that differ in it are never pooled or "
                + "compared. At 800 there are no darks; at 1600 there are no bias frames and no flats. Correct the capture "
                + "table if it did not really change, or take the missing frames at each value that you use.",
            finding.Message
        );
    }

    [Fact]
    public void AnIsoChangedHalfWayMakesTwoSets()
    {
        for (int i = 0; i < 6; i++)
            folder.Add($"dark{i}.dng", At(i, 120, i < 3 ? 800 : 1600));
        Assert.Equal([(800.0, 3), (1600.0, 3)], Named().Sets.Select(s => (s.Settings.Iso!.Value, s.Frames.Count)));
    }

    /// <summary>Two parts of a sensor that are of one size show different pixels.</summary>
    [Fact]
    public void CropsOfOneSizeFromTwoPlacesAreNotMixed()
    {
        for (int i = 0; i < 3; i++)
            folder.Add($"dark{i}.dng", At(i, 120, 800), change: f => f with { ActiveArea = new RawArea(0, 0, 2, 4) });
        for (int i = 3; i < 5; i++)
            folder.Add($"dark{i}.dng", At(i, 120, 800), change: f => f with { ActiveArea = new RawArea(2, 2, 4, 6) });
        Inventory inventory = Named();
        Assert.Equal([3, 2], inventory.Sets.Select(s => s.Frames.Count).OrderDescending());
        Finding finding = Assert.Single(inventory.Findings, f => f.Code == FindingCodes.FrameSizeDiffers);
        Assert.Equal(["dark3.dng", "dark4.dng"], finding.Frames);
        var log = new FindingsLog();
        IReadOnlyList<Frame> kept = CameraSelection.Select(inventory.Frames, log);
        Assert.Equal(["dark0.dng", "dark1.dng", "dark2.dng"], kept.Select(f => f.Name));
        Assert.Contains(
            "measure the others on their own: each size of a camera that crops is a mode of its own",
            Assert.Single(log.Findings).Message,
            StringComparison.Ordinal
        );
    }

    private static string Names(FrameSet set) => string.Join(' ', set.Frames.Select(f => f.Name));

    private static RawFacts At(int minute, double seconds, double iso) =>
        RawFolder.Dark with
        {
            ExposureSeconds = seconds,
            Iso = iso,
            Time = new RawTime(new DateTime(2031, 10, 14, 22, minute, 0), summer),
        };

    private void Dark(string name, DateTime? local, TimeSpan? zone) =>
        folder.Add(
            "dark/" + name,
            RawFolder.Dark with
            {
                Temperature = null,
                Time = local is { } time ? new RawTime(time, zone) : null,
            }
        );

    private Inventory Named()
    {
        Inventory inventory = FrameInventory.Read(
            [Directory.Exists(folder.Full("dark")) ? folder.Full("dark") : folder.Path],
            new InventoryOptions { NamesSay = true }
        );
        Assert.Empty(inventory.Rejected);
        return inventory;
    }
}
