using SensorProfile.Pixels;
using SensorProfile.Pixels.Pairs;
using SensorProfile.Pixels.Strips;
using SensorProfile.Pixels.Sums;
using SensorProfile.RawCheck;

namespace SensorProfile.Tests.Pixels;

/// <summary>
/// Single frames and stacks of two real cameras against reference results (expected.json beside the frames).
/// </summary>
public class LabFrameTests
{
    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit", 16), InlineData("lab-14bit", 4)]
    public void TheStepOfTheConverterIsFound(string folder, int step)
    {
        using var lab = new Lab(folder);
        var all = lab.Open("bias/*.fits", "flat/*.fits")
            .Select(frame => FrameStatistics.Measure(frame, Lab.Positions))
            .SelectMany(frame => frame.Channels)
            .Select(channel => channel.Codes);
        Assert.Equal(step, lab.Expected.GetProperty("adc_step_adu").GetInt32());
        Assert.Equal(step, CodeStep.Find(IntegerHistogram.Merge(all)).Step);
    }

    [DataTheory("lab-12bit"), InlineData("lab-12bit")]
    public void ChannelsScaledAfterTheConverterShowDoubledCodesEveryNinthOrTenth(string folder)
    {
        using var lab = new Lab(folder);
        FrameStatistics[] flats =
        [
            .. lab.Open("flat/*.fits").Select(frame => FrameStatistics.Measure(frame, Lab.Positions)),
        ];
        var populations = Enumerable
            .Range(0, 4)
            .Select(channel => IntegerHistogram.Merge(flats.Select(flat => flat.Channels[channel].Codes)))
            .Select(codes => CodePopulation.Count(codes, CodeStep.Find(codes)))
            .ToArray();
        Assert.Equal([false, true, true, false], populations.Select(population => population.LooksScaled)); // G R B G
        Assert.All(new[] { populations[1], populations[2] }, population =>
            Assert.InRange(population.DoubledSpacing, 8.5, 10.5)
        );
    }

    [DataTheory("lab-14bit"), InlineData("lab-14bit")]
    public void ChannelsThatWereNotScaledShowNoDoubledCodes(string folder)
    {
        using var lab = new Lab(folder);
        foreach (int channel in Enumerable.Range(0, 4))
        {
            var codes = IntegerHistogram.Merge(
                lab.Open("flat/*.fits")
                    .Select(frame => FrameStatistics.Measure(frame, Lab.Positions))
                    .Select(flat => flat.Channels[channel].Codes)
            );
            Assert.False(CodePopulation.Count(codes, CodeStep.Find(codes)).LooksScaled);
        }
    }

    [DataTheory("lab-12bit"), InlineData("lab-12bit")]
    public void TornDarksAreFoundAtTheirRowAndWholeOnesAreNot(string folder)
    {
        using var lab = new Lab(folder);
        var expected = lab
            .Expected.GetProperty("torn_frames")
            .GetProperty("groups")
            .GetProperty("torn_050s")
            .EnumerateArray()
            .ToArray();
        var torn = Torn(lab.Open("torn/*.fits"));
        Assert.Equal(
            expected.Select(frame => frame.GetProperty("torn").GetBoolean()),
            torn.Select(frame => frame is not null)
        );
        Assert.Equal(expected[0].GetProperty("first_low_row_in_crop").GetInt32(), torn[0]!.FirstRow);
        Assert.Equal(expected[2].GetProperty("first_low_row_in_crop").GetInt32(), torn[2]!.FirstRow);
        double signal =
            50
            * lab.Expected.GetProperty("dark_current")
                .GetProperty("mean_form")
                .GetProperty("slope")
                .GetProperty("value")
                .GetDouble();
        // the mean dark signal of 50 s goes missing; 10 % for half a degree
        Assert.Equal(-signal, torn[0]!.Step, 0.1 * signal);
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void NoWholeBiasOrDarkIsCalledTorn(string folder)
    {
        using var lab = new Lab(folder);
        string[] sets =
        [
            "bias/bias_*",
            "dark/dark_000.1s_*",
            "dark/dark_001s_*",
            "dark/dark_010s_*",
            "dark/dark_030s_*",
            "dark/dark_050s_*",
            "dark/dark_070s_*",
            "dark/dark_100s_*",
        ];
        Assert.All(sets, set => Assert.All(Torn(lab.Open(set)), Assert.Null));
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void BiasMeansAreThoseOfTheReference(string folder)
    {
        using var lab = new Lab(folder);
        var means = lab.Open("bias/*.fits")
            .Select(frame => FrameStatistics.Measure(frame, ColourMosaic.Monochrome))
            .Select(frame => Math.Round(frame.Channels[0].Codes.Mean, 3));
        Assert.Equal(
            lab.Expected.GetProperty("bias")
                .GetProperty("frame_means_adu")
                .EnumerateArray()
                .Select(mean => mean.GetDouble()),
            means
        );
    }

    [DataTheory("lab-12bit", "lab-14bit"), InlineData("lab-12bit"), InlineData("lab-14bit")]
    public void PerPixelNoiseHasThePercentilesOfTheReference(string folder)
    {
        using var lab = new Lab(folder);
        var expected = lab.Expected.GetProperty("pixel_temporal_sd_adu");
        float[] sorted = [.. PixelMoments.Measure(lab.Open("bias/*.fits")).Variance.Select(MathF.Sqrt).Order()];
        foreach (var (name, p) in new[] { ("median", 0.5), ("p90", 0.9), ("p99", 0.99), ("p99.9", 0.999) })
        {
            double place = (sorted.Length - 1) * p;
            int low = (int)place;
            Assert.Equal(
                expected.GetProperty(name).GetDouble(),
                sorted[low] + (place - low) * (sorted[low + 1] - sorted[low]),
                1e-3
            );
        }
        Assert.Equal(expected.GetProperty("mean").GetDouble(), sorted.Average(s => (double)s), 1e-3);
    }

    private static IReadOnlyList<TornFrame?> Torn(IReadOnlyList<IFrameSamples> frames) =>
        TornFrame.FindAll([.. frames.Select(frame => FrameStatistics.Measure(frame, Lab.Positions).RowMeans())]);
}
