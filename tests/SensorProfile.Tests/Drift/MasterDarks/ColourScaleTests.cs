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
        ColourScale scale = ColourScale.Of(Profile, Profile.Modes[0], Of(gain, "e-/ADU"))!;
        (MasterDark one, FreshDarks like, _) = scale.Apply(apart, freshApart, null);
        MasterVerdict judged = MasterCheck.Check(one, like, null, Ruler(gain), null);
        Assert.Equal(expected, plain.Verdict);
        Assert.Equal(plain.Verdict, judged.Verdict);
        Assert.Equal(plain.Loss!.Value, judged.Loss!.Value, 0.02 * plain.Loss.Value + 0.02);
        if (expected == CheckVerdict.Keep)
            return;
        // one mean gain for all of them gives another number where pixels of one colour count
        MasterVerdict mean = MasterCheck.Check(apart, freshApart, null, Ruler(gain), null);
        Assert.True(Math.Abs(mean.Loss!.Value - plain.Loss.Value) > 0.1 * plain.Loss.Value, $"{mean.Loss.Value}");
    }

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
