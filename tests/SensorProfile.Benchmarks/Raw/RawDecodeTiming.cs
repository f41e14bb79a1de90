using System.Diagnostics;
using System.Globalization;

namespace SensorProfile.Benchmarks.Raw;

/// <summary>
/// Prints the processor time of <see cref="RawDecodeBenchmark"/> in every form, the least of several runs: on a busy
/// machine it says more than the clock.
/// </summary>
internal static class RawDecodeTiming
{
    private const int Runs = 12;
    private const int ReadsPerRun = 10; // reading alone is shorter than the counter's steps

    /// <param name="only">Forms to measure; none for all.</param>
    /// <param name="output">Takes the table.</param>
    public static int Run(IReadOnlyList<string> only, TextWriter output)
    {
        output.WriteLine("| form | decode, ns per pixel | read alone, ns per pixel |");
        output.WriteLine("|---|---:|---:|");
        foreach (string form in RawDecodeBenchmark.Forms.Where(form => only.Count == 0 || only.Contains(form)))
        {
            if (RawDecodeBenchmark.Lacking(form) is { } reason)
            {
                output.WriteLine($"| {form} | not measured: {reason} | |");
                continue;
            }
            using var benchmark = new RawDecodeBenchmark { Form = form };
            benchmark.Setup();
            double decode = Least(1, benchmark.DecodeRows);
            double read = Least(ReadsPerRun, benchmark.ReadBytes);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {form} | {decode:F2} | {read:F2} |"));
        }
        return 0;
    }

    private static double Least(int times, Action action)
    {
        double least = double.PositiveInfinity;
        for (int run = 0; run < Runs; run++)
        {
            TimeSpan before = ProcessorTime();
            for (int i = 0; i < times; i++)
                action();
            least = Math.Min(least, (ProcessorTime() - before).TotalNanoseconds / times / RawDecodeBenchmark.Pixels);
        }
        return least;
    }

    /// <summary>Of this process and of those that it started and that have ended: LibRaw runs in a child.</summary>
    private static TimeSpan ProcessorTime()
    {
        using Process process = Process.GetCurrentProcess();
        return process.TotalProcessorTime + OfChildren();
    }

    /// <summary>Fields 16 and 17 of proc(5) stat, in hundredths of a second; 0 on systems without it.</summary>
    private static TimeSpan OfChildren()
    {
        const string file = "/proc/self/stat";
        const int childUser = 16 - 3,
            childSystem = 17 - 3; // counted from the state, which follows the name in brackets
        if (!File.Exists(file))
            return TimeSpan.Zero;
        string stat = File.ReadAllText(file);
        string[] fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        long ticks =
            long.Parse(fields[childUser], CultureInfo.InvariantCulture)
            + long.Parse(fields[childSystem], CultureInfo.InvariantCulture);
        return TimeSpan.FromMilliseconds(10 * ticks);
    }
}
