using SensorProfile.NoiseModel.Camera;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Session;

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
}
