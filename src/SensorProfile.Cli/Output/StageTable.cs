using SensorProfile.Screening;
using static System.FormattableString;

namespace SensorProfile.Cli.Output;

/// <summary>What the stages of a characterisation cost, as a table.</summary>
internal static class StageTable
{
    /// <summary>
    /// A row for each stage and one for the total. A pass means reading as many bytes as all frames hold: 2 when every sample is
    /// read twice.
    /// </summary>
    public static void Write(string path, StageClock clock)
    {
        clock.End();
        IReadOnlyList<StageTime> stages = clock.Stages;
        var whole = new StageTime(
            "all",
            stages.Sum(s => s.WallSeconds),
            stages.Sum(s => s.ProcessorSeconds),
            stages.Sum(s => s.BytesRead),
            stages.Sum(s => s.AllocatedBytes)
        );
        CsvFile.Write(path, writer =>
        {
            writer.WriteLine("stage,wall_s,processor_s,read_bytes,passes,allocated_bytes");
            foreach (StageTime s in stages.Append(whole))
                writer.WriteLine(
                    Invariant($"{s.Stage},{s.WallSeconds:0.000},{s.ProcessorSeconds:0.000},{s.BytesRead},")
                        + Invariant($"{(double)s.BytesRead / Math.Max(1, clock.BytesOfFrames):0.00},{s.AllocatedBytes}")
                );
        });
    }
}
