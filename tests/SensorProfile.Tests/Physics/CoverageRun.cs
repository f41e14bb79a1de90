using System.Globalization;
using System.Text;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Darks;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Truth;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// How often the stated 95 % intervals hold the truth, over random physical cameras: a long run outside the build, by
/// <c>SENSORPROFILE_COVERAGE_CAMERAS=1000 dotnet test tests/SensorProfile.Tests -c Release --filter CoverageRun</c>.
/// </summary>
/// <remarks>
/// Every camera is simulated, characterised and asked; the table is written to the file that
/// SENSORPROFILE_COVERAGE_TABLE names, after every camera, so that a run may be cut short.
/// </remarks>
public sealed class CoverageRun
{
    private const string Cameras = "SENSORPROFILE_COVERAGE_CAMERAS",
        Table = "SENSORPROFILE_COVERAGE_TABLE",
        First = "SENSORPROFILE_COVERAGE_FIRST";
    private const double Normal95 = 1.959964;

    private readonly SortedDictionary<string, (int Asked, int Held, double Sum, double Squares)> tallies = new(
        StringComparer.Ordinal
    );

    [LongRunFact(Cameras)]
    public void IntervalsHoldTheTruth()
    {
        int cameras = int.Parse(Environment.GetEnvironmentVariable(Cameras)!, CultureInfo.InvariantCulture),
            first = int.Parse(Environment.GetEnvironmentVariable(First) ?? "0", CultureInfo.InvariantCulture);
        for (int i = first; i < first + cameras; i++)
        {
            Ask(RandomCameras.Of(i), (ulong)i + 1);
            if (Environment.GetEnvironmentVariable(Table) is { Length: > 0 } file)
                File.WriteAllText(file, Text(i - first + 1));
        }
        Assert.All(tallies.Where(t => t.Value.Asked >= 100), t =>
        {
            double share = t.Value.Held / (double)t.Value.Asked,
                chance = 2 * Math.Sqrt(0.95 * 0.05 / t.Value.Asked);
            Assert.InRange(share, 0.93 - chance, 0.97 + chance);
        });
    }

    private void Ask(CameraDescription camera, ulong seed)
    {
        using var session = new SimulatedSession(camera, seed);
        CameraProfile profile = session.Characterise().Profile;
        ModeProfile mode = profile.Modes[0];
        SimulationTruth truth = session.Truth;
        PhysicalJudge judge = PhysicalJudge.Of(camera);
        Add("gain", mode.Gain, truth.Gain);
        Add("read noise", mode.ReadNoise, truth.ReadNoiseRms);
        DarkCurrentProfile dark = mode.DarkCurrent!;
        foreach (DarkCurrentPoint point in dark.Points)
            Add(
                "typical rate at a temperature",
                point.TypicalRate,
                truth.DarkCurrent!.Points.MinBy(p => Math.Abs(p.Temperature - point.Temperature))!.TypicalRate
            );
        if (dark.ReferenceTemperature is double reference)
        {
            double Typical(double celsius) =>
                judge.Rates(celsius, 300).Order().ElementAt(camera.Width * camera.Height / 2);
            Add("typical rate at the reference", dark.RateAtReference, Typical(reference));
            Add(
                "doubling temperature",
                dark.DoublingTemperature,
                4 * Math.Log(2) / Math.Log(Typical(reference + 2) / Typical(reference - 2))
            );
        }
        SkyRate sky = SkyRate.Given(0.4);
        try
        {
            SetpointAnswer setpoint = SetpointAdvice.Advise(
                profile,
                mode,
                new SetpointQuestion { ExposureSeconds = 300, Sky = sky }
            );
            double right = judge.Setpoint(0.99, 300, sky.Rate.Value, 0.05);
            if (right > -30)
                Add("99 % set point", setpoint.Quantities["setpoint99"], right);
            ToleranceAnswer tolerance = DarkTolerance.Find(
                profile,
                mode,
                new ToleranceQuestion { Sky = sky, TemperatureCelsius = -10 }
            );
            Add(
                "hot-pixel tolerance",
                tolerance.Causes.Single(c => c.Cause == BindingCause.HotPixels).Warmer,
                judge.HotTolerance(
                    PopulationTruthTests.Stack(1, Rejection.None) with
                    {
                        Sky = sky.Rate,
                    },
                    0.001,
                    3,
                    1_000_000,
                    3
                )
            );
        }
        catch (DecisionRefusedException)
        {
            Add("refused", null, 0);
        }
    }

    private void Add(string what, Measurement? told, double truth)
    {
        tallies.TryGetValue(what, out (int Asked, int Held, double Sum, double Squares) tally);
        double z = told is null ? double.NaN : (told.Value - truth) / told.StandardUncertainty;
        tallies[what] = double.IsNaN(z)
            ? tally
            : (tally.Asked + 1, tally.Held + (Math.Abs(z) <= Normal95 ? 1 : 0), tally.Sum + z, tally.Squares + z * z);
    }

    private string Text(int cameras)
    {
        var text = new StringBuilder();
        text.AppendLine(
            CultureInfo.InvariantCulture,
            $"Coverage of the stated 95 % intervals over {cameras} random physical cameras (`CoverageRun`)."
        );
        text.AppendLine();
        text.AppendLine("| quantity | asked | held | mean z | rms z |");
        text.AppendLine("|---|---|---|---|---|");
        foreach ((string what, (int asked, int held, double sum, double squares)) in tallies)
            if (asked > 0)
                text.AppendLine(
                    CultureInfo.InvariantCulture,
                    $"| {what} | {asked} | {100.0 * held / asked:0.0} % | {sum / asked:+0.00;-0.00} | {Math.Sqrt(squares / asked):0.00} |"
                );
        return text.ToString();
    }
}
