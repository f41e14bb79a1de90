using SensorProfile.Drift.MasterDarks;
using SensorProfile.Frames;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Simulation;

namespace SensorProfile.Tests.Drift.MasterDarks;

/// <summary>
/// A camera that multiplies the codes of its colours apart: a master is judged as on the same camera that does not.
/// </summary>
public sealed class ColourScaleTests : IDisposable
{
    private const double Pedestal = 600;
    private static readonly double[] digital = [4, 1, 1, 2]; // R, G1, G2, B

    private readonly SimulatedMasters masters = new();

    public void Dispose() => masters.Dispose();

    [Theory]
    [InlineData(0.0, CheckVerdict.Keep)]
    [InlineData(0.08, CheckVerdict.Retake)]
    public void AMasterIsJudgedInElectronsWhateverItsColoursAreMultipliedBy(double newHot, CheckVerdict expected)
    {
        CameraDescription aged = SimulatedMasters.Camera(years: newHot > 0 ? 1 : 0, bias: 0, newHot: newHot);
        FrameSet set = masters.Fresh(aged).Sets[0];
        FreshDarks fresh = FreshDarks.Read(set, [], CancellationToken.None)!;
        MasterDark master = MasterDark.Read(
            masters.Write("plain.fits", SimulatedMasters.Library().Dark.Select(v => (float)v))
        );
        MasterVerdict plain = MasterCheck.Check(master, fresh, null, Ruler(SimulatedMasters.Gain), null);

        MasterDark apart = master with { Values = Multiplied(master.Values, Pedestal) };
        FreshDarks freshApart = FreshDarks.Measured(
            set,
            fresh.Width,
            Multiplied(fresh.Mean, Pedestal),
            Multiplied(fresh.HalfDifference, 0),
            fresh.Frames
        );
        double gain = digital.Average(d => SimulatedMasters.Gain / d);
        ColourScale scale = ColourScale.Find(Profile, Profile.Modes[0], Of(gain, "e-/ADU"))!;
        MasterVerdict judged = Judged(apart, freshApart, scale, gain);
        Assert.Equal(expected, plain.Verdict);
        Assert.Equal(plain.Verdict, judged.Verdict);
        Assert.Equal(plain.Loss!.Value, judged.Loss!.Value, 0.02 * plain.Loss.Value + 0.02);
        if (expected == CheckVerdict.Keep)
            return;
        // one mean gain for all of them gives another number where pixels of one colour count
        MasterVerdict mean = MasterCheck.Check(apart, freshApart, null, Ruler(gain), null);
        Assert.True(Math.Abs(mean.Loss!.Value - plain.Loss.Value) > 0.1 * plain.Loss.Value, $"{mean.Loss.Value}");
    }

    /// <summary>
    /// The same master moved by an odd number of pixels, where its first pixel is of another colour, or cropped from one
    /// on, is judged alike.
    /// </summary>
    [Theory]
    [InlineData(1, 0, 199, 150)]
    [InlineData(0, 3, 200, 147)]
    [InlineData(3, 1, 197, 149)]
    [InlineData(7, 9, 160, 120)]
    public void APartOfTheFrameKeepsItsColours(int left, int top, int width, int height)
    {
        (MasterDark plain, FreshDarks plainFresh, MasterDark apart, FreshDarks freshApart) = Aged(0.08);
        MasterDark Cut(MasterDark m) =>
            m with
            {
                Width = width,
                Height = height,
                Values =
                [
                    .. Enumerable
                        .Range(0, width * height)
                        .Select(i => m.Values[(top + i / width) * 200 + left + i % width]),
                ],
            };
        Realignment cut = Realignment.Find(Cut(plain), plainFresh, null)!;
        MasterVerdict expected = MasterCheck.Check(cut.Master, cut.Fresh, null, Ruler(SimulatedMasters.Gain), null);
        MasterVerdict judged = Judged(Cut(apart), freshApart, Scale, MeanGain);
        Assert.Equal(expected.Verdict, judged.Verdict);
        Assert.Equal(expected.Loss!.Value, judged.Loss!.Value, 0.02 * expected.Loss.Value + 0.02);
        MasterVerdict mean = MasterCheck.Check(
            cut.Master with
            {
                Values = Cut(apart).Values,
            },
            freshApart.Part(left, top, width, height),
            null,
            Ruler(MeanGain),
            null
        );
        Assert.True(Math.Abs(mean.Loss!.Value - expected.Loss.Value) > 0.1 * expected.Loss.Value, $"{mean.Loss.Value}");
    }

    /// <summary>
    /// Equal electrons in four colours of g_c e-/ADU give a binned pixel whose gain is 4/Σ(1/g_c): of a dark signal that
    /// is alike everywhere, none of the four colours is counted twice.
    /// </summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void ABinnedPixelHasTheGainOfItsMix(int b)
    {
        (MasterDark plain, FreshDarks plainFresh, MasterDark apart, FreshDarks freshApart) = Aged(0.005);
        MasterDark Binned(MasterDark m) =>
            m with
            {
                Width = 200 / b,
                Height = 150 / b,
                Values = FreshDarks.Binned(m.Values, 200, b),
            };
        double truth = Spread(Realignment.Find(Binned(plain), plainFresh, null)!) * SimulatedMasters.Gain;
        double scaled = Spread(Scale.Apply(Realignment.Find(Binned(apart), freshApart, null)!)) * MeanGain,
            asIs = Spread(Realignment.Find(Binned(apart), freshApart, null)!) * MeanGain;
        // the noise of the loud colour weighs more in their mix: Σd²/(Σd)²·4 = 1.375 in variance for 4, 1, 1, 2
        double mixed = b % 2 == 0 ? Math.Sqrt(1.375) : 1.16;
        Assert.InRange(scaled / truth, 0.9 * mixed, 1.1 * mixed);
        Assert.True(Math.Abs(asIs / truth / mixed - 1) > 0.1, $"{asIs / truth}");
    }

    private static double Spread(Realignment aligned) => RobustSpread.Measure(aligned.Fresh.HalfDifference);

    private static MasterVerdict Judged(MasterDark master, FreshDarks fresh, ColourScale scale, double gain)
    {
        Realignment one = scale.Apply(Realignment.Find(master, fresh, null)!);
        return MasterCheck.Check(one.Master, one.Fresh, null, Ruler(gain), null);
    }

    /// <summary>A master of the first year and fresh darks of the second, as they are and with colours apart.</summary>
    private (MasterDark Plain, FreshDarks PlainFresh, MasterDark Apart, FreshDarks FreshApart) Aged(double newHot)
    {
        FrameSet set = masters.Fresh(SimulatedMasters.Camera(years: 1, bias: 0, newHot: newHot)).Sets[0];
        FreshDarks fresh = FreshDarks.Read(set, [], CancellationToken.None)!;
        MasterDark master = MasterDark.Read(
            masters.Write("plain.fits", SimulatedMasters.Library().Dark.Select(v => (float)v))
        );
        return (
            master,
            fresh,
            master with
            {
                Values = Multiplied(master.Values, Pedestal),
            },
            FreshDarks.Measured(
                set,
                fresh.Width,
                Multiplied(fresh.Mean, Pedestal),
                Multiplied(fresh.HalfDifference, 0),
                fresh.Frames
            )
        );
    }

    private static double MeanGain { get; } = digital.Average(d => SimulatedMasters.Gain / d);

    private static ColourScale Scale => ColourScale.Find(Profile, Profile.Modes[0], Of(MeanGain, "e-/ADU"))!;

    private static StackRuler Ruler(double gain) =>
        new(Of(gain, "e-/ADU"), new DarkLibraryOptions { Sky = NamedSkies.Dark });

    private static Measurement Of(double value, string unit) => new(value, 0.001 * value, unit, 1000, "true value");

    private static float[] Multiplied(float[] map, double around) =>
        [.. map.Select((v, i) => (float)(around + (v - around) * digital[i / 200 % 2 * 2 + i % 200 % 2]))];

    private static CameraProfile Profile { get; } =
        SimulatedMasters.Profile with
        {
            Camera = SimulatedMasters.Profile.Camera with { ColourFilter = "RGGB" },
            Modes =
            [
                SimulatedMasters.Profile.Modes[0] with
                {
                    Gain = null,
                    Channels =
                    [
                        .. new[] { "R", "G1", "G2", "B" }.Select(
                            (name, c) =>
                                new ChannelProfile
                                {
                                    Name = name,
                                    Gain = Of(SimulatedMasters.Gain / digital[c], "e-/ADU"),
                                    ReadNoise = Of(1.6, "e-"),
                                }
                        ),
                    ],
                },
            ],
        };
}
