using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests;

public class AgeingTests
{
    private static SimulationTruth At(double years) =>
        SimulationTruth.Of(new SimulatedNight(DemoCameras.Tarn9M(years) with { Shots = [] }, 1));

    private static HashSet<(int, int)> Hot(SimulationTruth truth) => [.. truth.HotPixels.Select(p => (p.X, p.Y))];

    [Fact]
    public void ValuesGrowAsStated()
    {
        SimulationTruth now = At(0),
            later = At(3);
        Assert.Equal(0.012, now.DarkCurrent!.RateAtReference, 12);
        Assert.Equal(0.012 * Math.Pow(1.04, 3), later.DarkCurrent!.RateAtReference, 12);
        Assert.Equal(0.8 * Math.Pow(1.001, 3), later.Gain, 12);
        Assert.Equal(now.Glow[0].Peak * Math.Pow(1.05, 3), later.Glow[0].Peak, 9);
        // The probe then reads 0.3 °C too warm: at a reading of −10 °C the die is at −10.3 °C.
        Assert.Equal(
            later.DarkCurrent.RateAtReference * Math.Pow(2, -0.3 / 6.1),
            later.DarkCurrent.RateAtReferenceReading,
            12
        );
    }

    /// <summary>
    /// Per year: 0.03 % of 307 200 pixels = 92 new ones, 3 % of about 614 heal; the patch reaches a radius of 9 px a
    /// year with a density of ¼.
    /// </summary>
    [Fact]
    public void HotPixelsComeAndHeal()
    {
        HashSet<(int, int)> first = Hot(At(0)),
            third = Hot(At(3));
        int healed = first.Count(p => !third.Contains(p));
        Assert.InRange(healed, 55 - 33, 55 + 33); // 614·(1 − 0.97³) = 53.7
        int patch = third.Count(p => InPatch(p, 27) && !first.Contains(p));
        Assert.InRange(patch, 572 - 95, 572 + 95); // ¼·π·27² = 572.6 (a few coincide with others)
        int elsewhere = third.Count(p => !InPatch(p, 27) && !first.Contains(p));
        Assert.InRange(elsewhere, 265 - 75, 265 + 75); // 276, a few healed again
    }

    [Fact]
    public void TheSameSensorOneYearOnKeepsWhatItHad()
    {
        SimulationTruth second = At(2),
            third = At(3);
        Assert.Equal(
            At(0)
                .HotPixels.Where(p => p.BornYears == 0)
                .Select(p => p.Rate)
                .Intersect(third.HotPixels.Select(p => p.Rate))
                .Count(),
            third.HotPixels.Count(p => p.BornYears == 0)
        );
        // Everything hot in year 3 that was born before year 2 was hot in year 2.
        Assert.All(third.HotPixels.Where(p => p.BornYears <= 2), p => Assert.Contains(p, second.HotPixels));
        Assert.All(third.HotPixels, p => Assert.InRange(p.BornYears, 0, 3));
    }

    [Fact]
    public void AgeAddsUp() => Assert.Equal(DemoCameras.Tarn9M(3).ToJson(), DemoCameras.Tarn9M(1).Age(2).ToJson());

    [Fact]
    public void AnAgedNightIsTakenYearsLater()
    {
        var night = new SimulatedNight(DemoCameras.Tarn9M(2), 1);
        Assert.Equal(new DateTime(2033, 10, 14), night.Frames[0].StartUtc.Date, TimeSpan.FromDays(1));
    }

    [Fact]
    public void WithoutASerialNumberItCannotAge()
    {
        var error = Assert.Throws<InvalidOperationException>(() =>
            new CameraDescription { Width = 4, Height = 3 }.Age(1)
        );
        Assert.Equal(
            "A camera without a serial number is another individual in every run; give it a serial number before "
                + "it ages.",
            error.Message
        );
    }

    [Fact]
    public void AnotherSeedIsTheSameSensor()
    {
        CameraDescription camera = DemoCameras.Tarn9M() with { Shots = [], Glow = [new Glow()] };
        Assert.Equal(
            SimulationTruth.Of(new SimulatedNight(camera, 1)).HotPixels,
            SimulationTruth.Of(new SimulatedNight(camera, 2)).HotPixels
        );
    }

    private static bool InPatch((int X, int Y) p, double radius) =>
        Math.Pow(p.X - 52, 2) + Math.Pow(p.Y - 432, 2) <= radius * radius;
}
