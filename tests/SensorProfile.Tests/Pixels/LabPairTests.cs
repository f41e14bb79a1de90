using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;
using SensorProfile.Tests.Pixels.Pairs;

namespace SensorProfile.Tests.Pixels;

/// <summary>
/// Two real cameras against reference results computed from the same files with numpy (expected.json beside the
/// frames).
/// </summary>
public class LabPairTests
{
    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void ReadNoiseOfSevenBiasPairsIsThatOfTheReference(string folder)
    {
        using var lab = new Lab(folder);
        var pairs = BiasPairs(lab);
        var expected = lab.Expected.GetProperty("read_noise_adu");
        double rms = Math.Sqrt(
            pairs.SelectMany(pair => pair.Channels).Average(channel => channel.TemporalVariance.Value)
        );
        Lab.AssertAccepted(expected.GetProperty("all"), rms);
        // The same frames, the same definition: no statistical error between the two, only the first limits of the clip
        // differ.
        Assert.Equal(expected.GetProperty("all").GetProperty("value").GetDouble(), rms, 0.001 * rms);
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void RowAndColumnNoiseAreThoseOfTheReference(string folder)
    {
        using var lab = new Lab(folder);
        var channels = BiasPairs(lab).SelectMany(pair => pair.Channels).ToArray();
        double row = channels.Average(channel => StructuredNoise.Measure(channel).RowVariance.Value),
            column = channels.Average(channel => StructuredNoise.Measure(channel).ColumnVariance.Value);
        // The reference subtracts the whole variance of d, row noise included, where only what pixels have of their own
        // is in a line's mean:
        AssertNear("row_noise_adu", row - row / channels[0].A.RowLength);
        AssertNear("column_noise_adu", column - row / channels[0].A.ColumnLength);

        void AssertNear(string name, double found)
        {
            var expected = lab.Expected.GetProperty(name).GetProperty("variance");
            // the same frames: well within a standard error
            Assert.Equal(
                expected.GetProperty("value").GetDouble(),
                found,
                0.5 * expected.GetProperty("se").GetDouble()
            );
        }
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void RowScaledFlatPairsGiveTheGainOfTheReference(string folder)
    {
        using var lab = new Lab(folder);
        var gains = Gains(lab, RatioKind.RowByRow);
        var reference = lab
            .Expected.GetProperty("gain")
            .GetProperty("by_position")
            .EnumerateObject()
            .Select(p => p.Value)
            .ToArray();
        for (int channel = 0; channel < 4; channel++)
        {
            double gain = 1 / gains[channel].Average(k => k.Value),
                expected = reference[channel].GetProperty("value").GetDouble();
            Lab.AssertAccepted(reference[channel], gain);
            Assert.Equal(expected, gain, 0.003 * expected);
        }
    }

    [DataTheory("lab-12bit"), InlineData("lab-12bit")]
    public void OneRatioForFlickeringFlatsGivesAGainManyTimesWrongAndTheRowRatiosSayWhy(string folder)
    {
        using var lab = new Lab(folder);
        var expected = lab.Expected.GetProperty("gain").GetProperty("pairs")[0];
        var pair = lab.Open("flat/flat_01.fits", "flat/flat_02.fits");
        var channel = ScaledPair.Measure(pair[0], pair[1], Lab.Positions, BiasOf(lab), RatioKind.WholeFrame)[0];
        double gain = GainOfAPair.Of(channel, new Measurement(770, 3, "ADU²", 1, "")).Value;
        Assert.Equal(expected.GetProperty("K_adu_per_e_one_ratio").GetDouble(), gain, 0.02 * gain);
        Assert.InRange(channel.RowRatios.Min(), 0.70, 1);
        Assert.InRange(channel.RowRatios.Max(), 1, 1.45);
        Assert.True(channel.RatioChiSquare > 10, $"χ²/ν of the row ratios is only {channel.RatioChiSquare}");
    }

    [DataTheory("lab-14bit"), InlineData("lab-14bit")]
    public void SteadyFlatsNeedNoRowRatios(string folder)
    {
        using var lab = new Lab(folder);
        var pair = lab.Open("flat/flat_05.fits", "flat/flat_06.fits");
        foreach (var channel in ScaledPair.Measure(pair[0], pair[1], Lab.Positions, BiasOf(lab), RatioKind.WholeFrame))
            // 150 rows: 1 ± √(2/149) = 0.12; the camera's own row noise adds a little
            Assert.InRange(channel.RatioChiSquare, 0.6, 1.5);
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void RawFramesShowNoNoiseReduction(string folder)
    {
        using var lab = new Lab(folder);
        var bias = lab.Open("bias/*.fits");
        var pair = PairStatistics.Measure(bias[0], bias[1], Lab.Positions);
        foreach (var channel in NeighbourCorrelation.Measure(bias[0], bias[1], pair))
        foreach (var lag in new[] { channel.AlongRow, channel.AlongColumn, channel.Diagonal })
            // 30000 pixels: ± 0.006 each; telegraph pixels and filters leave tens of per cent
            Assert.InRange(lag.Value, -0.03, 0.03);
    }

    private static List<PairStatistics> BiasPairs(Lab lab)
    {
        var bias = lab.Open("bias/*.fits");
        return
        [
            .. Enumerable.Range(0, 7).Select(i => PairStatistics.Measure(bias[2 * i], bias[2 * i + 1], Lab.Positions)),
        ];
    }

    private static ChannelPedestals BiasOf(Lab lab)
    {
        FrameStatistics[] bias =
        [
            .. lab.Open("bias/*.fits").Select(frame => FrameStatistics.Measure(frame, Lab.Positions)),
        ];
        return ChannelPedestals.Level(
            Lab.Positions,
            [.. Enumerable.Range(0, 4).Select(channel => bias.Average(frame => frame.Channels[channel].Codes.Mean))]
        );
    }

    private static Measurement[][] Gains(Lab lab, RatioKind kind)
    {
        var read = BiasPairs(lab);
        var pedestal = BiasOf(lab);
        var pairs = lab
            .Expected.GetProperty("gain")
            .GetProperty("pairs")
            .EnumerateArray()
            .Select(p => p.GetProperty("pair"))
            .Select(p => (First: p[0].GetString()!, Second: p[1].GetString()!))
            .Distinct();
        var gains = pairs
            .Select(names =>
            {
                var pair = lab.Open(names.First, names.Second);
                return ScaledPair.Measure(pair[0], pair[1], Lab.Positions, pedestal, kind);
            })
            .ToArray();
        return
        [
            .. Enumerable
                .Range(0, 4)
                .Select(channel =>
                {
                    double variance = read.Average(pair => pair.Channels[channel].TemporalVariance.Value);
                    return gains
                        .Select(pair =>
                            GainOfAPair.Of(pair[channel], new Measurement(variance, 0, "ADU²", read.Count, ""))
                        )
                        .ToArray();
                }),
        ];
    }
}
