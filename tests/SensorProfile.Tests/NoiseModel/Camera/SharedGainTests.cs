using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;
using SensorProfile.Tests.Decisions;

namespace SensorProfile.Tests.NoiseModel.Camera;

/// <summary>A gain that is off takes read noise and dark current along.</summary>
public sealed class SharedGainTests
{
    private static readonly ModeProfile mode = new()
    {
        Gain = new Measurement(1, 0.004, "e-/ADU", 1, ""),
        ReadNoise = new Measurement(2, 0.01, "e-", 1, ""),
    };

    // r_gain = 0.4 %, r_read = 0.5 %, r_law = 0.8 %: correlations 0.8 and 0.5
    [Fact]
    public void CorrelationsAreRatiosOfTheRelativeUncertainties() =>
        Assert.Equal(new SharedGain(0.8, 0.5), SharedGain.Find(mode with { DarkCurrent = new() }, 0.008));

    [Fact]
    public void ADarkCurrentFromAnotherGainSettingSharesNoneOfThisOne() =>
        Assert.Equal(
            0,
            SharedGain
                .Find(mode with { DarkCurrent = new DarkCurrentProfile { CarriedFrom = new ModeSettings() } }, 0.008)
                .WithDarkCurrent
        );

    [Fact] // without flats there is no gain to be off
    public void WithoutAGainNothingIsShared() =>
        Assert.Equal(new SharedGain(0, 0), SharedGain.Find(mode with { Gain = null, DarkCurrent = new() }, 0.008));

    /// <summary>
    /// Deviates of unit variance with the stated correlations; read noise and law correlate by the product of both, since only
    /// the gain joins them. A correlation of 40,000 draws is known to 0.005.
    /// </summary>
    [Fact]
    public void DeviatesCorrelateAsStated()
    {
        var random = new Random(3);
        double Next() => MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
        var shared = new SharedGain(0.8, 0.5);
        double[] law = [.. Enumerable.Range(0, 40_000).Select(_ => Next())];
        (double Gain, double ReadNoise)[] drawn = [.. law.Select(z => shared.Deviates(z, Next(), Next()))];
        double[] gain = [.. drawn.Select(d => d.Gain)],
            read = [.. drawn.Select(d => d.ReadNoise)];
        Assert.Equal(0.5, MathNet.Numerics.Statistics.Correlation.Pearson(law, gain), 0.02);
        Assert.Equal(0.8, MathNet.Numerics.Statistics.Correlation.Pearson(gain, read), 0.02);
        Assert.Equal(0.4, MathNet.Numerics.Statistics.Correlation.Pearson(law, read), 0.02);
        Assert.Equal(1, read.Average(r => r * r), 0.03);
    }

    /// <summary>
    /// Draws of a camera feel it: every number of the invented camera is known to 2 %, and so its gain explains all of it (ρ = 1).
    /// Drawn apart, read noise and gain would correlate by 0 ± 0.1 over 120 draws.
    /// </summary>
    [Fact]
    public void DrawsOfACameraMoveReadNoiseAndRateWithTheGain()
    {
        var camera = new Tarn();
        SensorModel[] drawn =
        [
            .. SensorReader
                .Of(camera.Profile(), camera.Mode())
                .Draws(120, 1)
                .Select(d => d.Model)
                .OfType<SensorModel>(),
        ];
        double[] gain = [.. drawn.Select(m => m.Gain)];
        Assert.True(Pearson(gain, m => Math.Sqrt(m.ReadVariance)) > 0.99);
        Assert.True(Pearson(gain, m => m.Law.RateAt(Tarn.Reference)) > 0.95);
        double Pearson(double[] a, Func<SensorModel, double> of) =>
            MathNet.Numerics.Statistics.Correlation.Pearson(a, drawn.Select(of));
    }

    /// <summary>
    /// A rate of 0.006 ± 2 % and a doubling temperature of 6 °C ± 2 %, uncorrelated, give at ΔT = 5 °C a relative uncertainty of
    /// √(0.02² + (ln 2 · 5/6 · 0.02)²).
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(-10)]
    public void TheLawsOwnUncertaintyIsThatOfItsParameters(double difference)
    {
        var camera = new Tarn();
        TypicalLaw law = SensorReader.Of(camera.Profile(), camera.Mode()).Best.Law;
        double ofDoubling = Math.Log(2) * difference / camera.Doubling * camera.Relative;
        Assert.Equal(
            double.Hypot(camera.Relative, ofDoubling),
            law.RelativeUncertaintyAt(Tarn.Reference + difference),
            1e-4
        );
    }
}
