using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Simulation.Truth;

namespace SensorProfile.Simulation.Tests.Rendering;

/// <summary>What a sensor does by physics of its own, against closed forms written out here.</summary>
public sealed class PhysicsTests
{
    private const double Boltzmann = 8.617333262e-5; // eV/K, CODATA 2018

    private static readonly CameraDescription Quiet = EffectTests.Plain with
    {
        ReadNoise = 0.01,
        Gain = 1,
        DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
    };

    private static CameraDescription With(SensorPhysics physics) => Quiet with { Physics = physics };

    private static SimulationTruth Truth(DefectPopulation law) =>
        SimulationTruth.Of(new SimulatedNight(With(new SensorPhysics { Defects = [law] }), 5));

    /// <summary>T^1.5·exp(−E/kT): at 0.6 eV 263.15 → 253.15 K gives (0.962)^1.5·exp(−6962.7·1.50113e−4) = 0.33175.</summary>
    [Fact]
    public void GenerationThroughALevelFollowsItsEnergy()
    {
        double factor = new DefectEnergy(0.6, 0).Factor(-20, -10);
        Assert.Equal(
            Math.Pow(253.15 / 263.15, 1.5) * Math.Exp(-0.6 / Boltzmann * (1 / 253.15 - 1 / 263.15)),
            factor,
            1e-9
        );
        Assert.InRange(factor, 0.331, 0.3325);
        Assert.Equal(1, new DefectEnergy(0.6, 0.3).Factor(-10, -10), 1e-12);
    }

    /// <summary>
    /// Whole gap: Varshni's 1.1202414678263 eV at 263.15 K and 1.1226441104307 eV at 253.15 K, T³ before it.
    /// </summary>
    [Fact]
    public void DiffusionFollowsTheWholeGap()
    {
        double expected =
            Math.Pow(253.15 / 263.15, 3)
            * Math.Exp(1.1202414678263 / (Boltzmann * 263.15) - 1.1226441104307 / (Boltzmann * 253.15));
        Assert.Equal(expected, new DefectEnergy(0.6, 1).Factor(-20, -10), 1e-6);
        // ΔT₂ of the whole gap with T³ at −10 °C is 3.30 °C
        Assert.Equal(3.30, new DefectEnergy(0.6, 1).Doubling(-10, -10), 0.02);
    }

    /// <summary>30 000 × 2 % = 600 ± 24 defects, energies 0.60 ± 0.04 eV, half of a power law of slope 1 above 2×.</summary>
    [Fact]
    public void EveryDefectHasItsOwnEnergyAndRate()
    {
        SimulationTruth truth = Truth(
            new DefectPopulation
            {
                Share = 0.02,
                Rate = 1,
                Slope = 1,
                Maximum = 1e6,
                Energy = 0.6,
                EnergySpread = 0.04,
            }
        );
        Assert.InRange(truth.HotPixels.Count, 600 - 110, 600 + 110);
        double mean = truth.HotPixels.Average(p => p.Energy!.Value),
            spread = Math.Sqrt(truth.HotPixels.Average(p => Math.Pow(p.Energy!.Value - mean, 2)));
        Assert.InRange(mean, 0.6 - 0.0075, 0.6 + 0.0075);
        Assert.InRange(spread, 0.034, 0.046);
        Assert.InRange(truth.HotPixels.Count(p => p.Rate > 2) / (double)truth.HotPixels.Count, 0.41, 0.59);
        // a pixel of 0.6 eV doubles over ln2·kT²/(E + 1.5kT) = 6.52 °C at −10 °C
        Assert.All(truth.HotPixels, p =>
            Assert.Equal(
                Math.Log(2) * Boltzmann * 263.15 * 263.15 / (p.Energy!.Value + 1.5 * Boltzmann * 263.15),
                p.Doubling,
                0.01
            )
        );
    }

    [Fact]
    public void LogNormalTailHasItsMedianAndSpread()
    {
        SimulationTruth truth = Truth(
            new DefectPopulation
            {
                Share = 0.05,
                Tail = DefectTail.LogNormal,
                Rate = 0.2,
                Spread = 0.8,
                Maximum = 1e6,
            }
        );
        double[] logs = [.. truth.HotPixels.Select(p => Math.Log(p.Rate))];
        double mean = logs.Average();
        Assert.InRange(mean - Math.Log(0.2), -0.09, 0.09); // 0.8/√1500 = 0.021
        Assert.InRange(Math.Sqrt(logs.Average(l => (l - mean) * (l - mean))), 0.73, 0.87);
    }

    /// <summary>The frame shows what the truth states, at another temperature than the reference.</summary>
    [Fact]
    public void FramesShowTheDefects()
    {
        var night = new SimulatedNight(
            With(
                new SensorPhysics
                {
                    Defects =
                    [
                        new DefectPopulation
                        {
                            Share = 0.02,
                            Rate = 1,
                            Slope = 2,
                        },
                    ],
                }
            ) with
            {
                Shots = [EffectTests.Darks(100, 0, 1)],
            },
            6
        );
        ushort[] frame = night.Render(night.Frames[0]);
        int beyond = 0;
        foreach (TrueHotPixel p in SimulationTruth.Of(night).HotPixels)
        {
            double mean =
                100
                * p.Rate
                * Math.Pow(273.15 / 263.15, 1.5)
                * Math.Exp(-p.Energy!.Value / Boltzmann * (1 / 273.15 - 1 / 263.15));
            bool full = mean > 60000;
            beyond +=
                !full && Math.Abs(frame[(p.Y - 1) * 200 + p.X - 1] - 500 - mean) > 4 * Math.Sqrt(mean) + 1 ? 1 : 0;
        }
        Assert.InRange(beyond, 0, 2);
    }

    /// <summary>rate·(t + w·(t − τ(1 − exp(−t/τ)))): 2·(100 + 0.5·(100 − 50·(1 − e⁻²))) = 256.77 e-.</summary>
    [Fact]
    public void GlowWarmsUpAndHasItsOwnEnergy()
    {
        var glow = new Glow
        {
            Rate = 2,
            WarmUp = 0.5,
            WarmUpTime = 50,
            ActivationEnergy = 0.2,
        };
        Assert.Equal(256.7668, GlowMap.PeakElectrons(glow, 100, -10, -10), 1e-3);
        Assert.Equal(
            256.7668 * Math.Exp(-0.2 / Boltzmann * (1 / 253.15 - 1 / 263.15)),
            GlowMap.PeakElectrons(glow, 100, -20, -10),
            1e-3
        );
    }

    /// <summary>Steps are exponential over the traps: a share exp(−1) = 0.37 exceeds the mean.</summary>
    [Fact]
    public void TrapsHaveStepsAndDwellTimesOfTheirOwn()
    {
        var traps = new SwitchingTraps
        {
            Share = 0.05,
            Step = 20,
            DwellSpread = 1.5,
            DwellHigh = 60,
            DwellEnergy = 0.3,
        };
        SimulationTruth truth = SimulationTruth.Of(
            new SimulatedNight(With(new SensorPhysics { SwitchingTraps = [traps] }), 7)
        );
        Assert.InRange(truth.TelegraphPixels.Count, 1500 - 160, 1500 + 160);
        Assert.InRange(
            truth.TelegraphPixels.Count(p => p.Amplitude > 20) / (double)truth.TelegraphPixels.Count,
            0.31,
            0.43
        );
        double[] logs = [.. truth.TelegraphPixels.Select(p => Math.Log(p.DwellHigh / 60))];
        Assert.InRange(logs.Average(), -0.17, 0.17);
        Assert.InRange(Math.Sqrt(logs.Average(l => l * l)), 1.38, 1.62);
        // 0.3 eV: 10 °C colder slows down by exp(0.3/k·(1/253.15 − 1/263.15)) = 1.686
        TelegraphPixel colder = new TelegraphPixel(0, 1, 0, 60, 120) { DwellEnergy = 0.3 }.At(-20, -10);
        Assert.Equal(60 * 1.6864, colder.DwellHigh, 0.02);
        Assert.Equal(1 / 3.0, colder.Duty, 1e-12);
    }

    /// <summary>
    /// 20 000 e- of flat, 1 % trapped: 100 s after its end the traps hold 200·e^(−100/300), of which 60 s release
    /// 1 − e^(−60/300).
    /// </summary>
    [Fact]
    public void LightPersistsIntoTheNextDark()
    {
        var night = new SimulatedNight(
            With(
                new SensorPhysics
                {
                    Persistence = new Persistence { Share = 0.01, Decay = 300 },
                }
            ) with
            {
                Shots =
                [
                    new Shot
                    {
                        Kind = FrameKind.Flat,
                        Exposure = 1,
                        Level = 20000,
                    },
                    EffectTests.Darks(60, -10, 1) with
                    {
                        Pause = 100,
                    },
                ],
            },
            8
        );
        double seconds = (night.Frames[1].StartUtc - night.Frames[0].StartUtc).TotalSeconds - 1,
            expected = 200 * Math.Exp(-seconds / 300) * (1 - Math.Exp(-60 / 300.0));
        Assert.Equal(expected, night.Frames[1].PersistenceElectrons, 1e-6);
        Assert.Equal(expected, night.Render(night.Frames[1]).Average(v => (double)v) - 500, 0.15); // √26/√30000 = 0.03
        Assert.Equal(expected, SimulationTruth.Of(night).Frames[1].PersistenceElectrons!.Value, 1e-6);
    }

    /// <summary>Six degrees across with ΔT₂ = 6: the last columns are twice the first; the middle keeps the rate.</summary>
    [Fact]
    public void TheDieCanBeWarmerOnOneSide()
    {
        CameraDescription camera = With(new SensorPhysics { GradientAcross = 6 }) with
        {
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6, RateAtReference = 1 },
        };
        float[] rates = TrueMaps.DarkRate(new SimulatedNight(camera, 9).Sensor, -10, 100);
        double Column(int x) => Enumerable.Range(0, 150).Average(y => rates[y * 200 + x]);
        Assert.Equal(2, Column(199) / Column(0), 0.02);
        Assert.Equal(1, Column(100), 0.01);
    }

    [Fact]
    public void LightLeaksIntoEveryFrame()
    {
        var night = new SimulatedNight(
            With(new SensorPhysics { LightLeak = 0.5 }) with
            {
                Shots = [EffectTests.Darks(100, -10, 1)],
            },
            10
        );
        Assert.Equal(550, night.Render(night.Frames[0]).Average(v => (double)v), 0.3);
    }

    /// <summary>A description without physics is written as before, and reads the same.</summary>
    [Fact]
    public void WithoutItNothingIsWritten()
    {
        string json = DemoCameras.Tarn9M().ToJson();
        Assert.DoesNotContain("physics", json);
        Assert.DoesNotContain("warmUp", json);
        CameraDescription read = CameraDescription.Parse(
            """
            { "width": 4, "height": 3, "physics": { "defects": [{ "share": 0.1, "tail": "log-normal" }],
              "switchingTraps": [{ "share": 0.1 }], "persistence": { "share": 0.001 } } }
            """
        );
        Assert.Equal(DefectTail.LogNormal, read.Physics!.Defects[0].Tail);
        Assert.Equal(0.6, read.Physics.Defects[0].Energy);
        Assert.Equal(60, read.Physics.SwitchingTraps[0].DwellHigh);
        Assert.Equal(300, read.Physics.Persistence!.Decay);
        Assert.Equal(read.ToJson(), CameraDescription.Parse(read.ToJson()).ToJson());
    }

    [Fact]
    public void AnImpossibleEnergyIsRefusedByItsPlace()
    {
        var error = Assert.Throws<CameraDescriptionException>(() =>
            CameraDescription.Parse(
                """{ "width": 4, "height": 3, "physics": { "defects": [{ "energy": 7 }] } }""",
                "a.json"
            )
        );
        Assert.Equal(
            "a.json, $.physics.defects[0].energy: found 7, which is not within 0…3. Correct the value there.",
            error.Message
        );
    }
}
