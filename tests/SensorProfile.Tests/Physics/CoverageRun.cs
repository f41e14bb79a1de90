using System.Globalization;
using System.Text;
using SensorProfile.Profiles;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Sensors;
using SensorProfile.Tests.Characterisation;

namespace SensorProfile.Tests.Physics;

/// <summary>
/// How often the stated 95 % intervals hold the truth, over random physical cameras: a long run outside the build, by
/// <c>SENSORPROFILE_COVERAGE_CAMERAS=1000 dotnet test tests/SensorProfile.Tests -c Release --filter CoverageRun</c>.
/// </summary>
/// <remarks>
/// Every camera is simulated, characterised and asked. The table is written to the file that
/// SENSORPROFILE_COVERAGE_TABLE names after every camera, so that a run may be cut short; SENSORPROFILE_COVERAGE_ROWS
/// names a file to which every number is added (camera, quantity, told, its uncertainty, truth).
/// </remarks>
public sealed class CoverageRun
{
    private const string Cameras = "SENSORPROFILE_COVERAGE_CAMERAS",
        Table = "SENSORPROFILE_COVERAGE_TABLE",
        Rows = "SENSORPROFILE_COVERAGE_ROWS",
        First = "SENSORPROFILE_COVERAGE_FIRST";

    private readonly SortedDictionary<string, Tally> tallies = new(StringComparer.Ordinal);

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
        CameraProfile profile = session.Characterise(quick: false).Profile;
        ModeProfile mode = profile.Modes[0];
        Sensor sensor = new SimulatedNight(camera, seed).Sensor;
        foreach (CoverageRow row in new ProfileCoverage(camera, session.Truth, sensor).Rows(mode))
            Add(seed, row);
        foreach (CoverageRow row in new AnswerCoverage(camera, new PhysicalJudge(sensor)).Rows(profile, mode))
            Add(seed, row);
    }

    private void Add(ulong seed, CoverageRow row)
    {
        tallies.TryGetValue(row.What, out Tally tally);
        double z = row.Z;
        tallies[row.What] = double.IsNaN(z)
            ? tally with
            {
                Silent = tally.Silent + 1,
            }
            : tally with
            {
                Asked = tally.Asked + 1,
                Held = tally.Held + (row.Held ? 1 : 0),
                Sum = tally.Sum + z,
                Squares = tally.Squares + z * z,
            };
        if (Environment.GetEnvironmentVariable(Rows) is { Length: > 0 } file)
            File.AppendAllText(
                file,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{seed},\"{row.What}\",{row.Told?.Value},{row.Told?.StandardUncertainty},{row.Truth}\n"
                )
            );
    }

    private readonly record struct Tally(int Asked, int Silent, int Held, double Sum, double Squares);

    private string Text(int cameras)
    {
        var text = new StringBuilder();
        text.AppendLine(
            CultureInfo.InvariantCulture,
            $"Coverage of the stated 95 % intervals over {cameras} random physical cameras (`CoverageRun`)."
        );
        text.AppendLine();
        text.AppendLine("| quantity | told | held | mean z | rms z |");
        text.AppendLine("|---|---:|---:|---:|---:|");
        foreach ((string what, Tally tally) in tallies)
            text.AppendLine(Line(what, tally));
        return text.ToString();
    }

    private static string Line(string what, Tally t) =>
        t.Asked == 0
            ? $"| {what} | 0 of {t.Silent} | | | |"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"| {what} | {t.Asked} | {100.0 * t.Held / t.Asked:0.0} % | "
                    + $"{Math.Round(t.Sum / t.Asked, 2) + 0.0:+0.00;−0.00} | {Math.Sqrt(t.Squares / t.Asked):0.00} |"
            );
}
