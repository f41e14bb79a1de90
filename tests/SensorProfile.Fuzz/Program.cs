using System.Globalization;
using SensorProfile.Fuzz.Pixels;
using SensorProfile.Fuzz.Targets;

namespace SensorProfile.Fuzz;

/// <summary>The long run: <c>dotnet run -c Release --project tests/SensorProfile.Fuzz -- SECONDS [SEED] [READER…]</c>.</summary>
internal static class Program
{
    private const string FoundFolder = "fuzz-found";

    private static int Main(string[] arguments) => Run(arguments, Console.Out, Console.Error);

    private static int Run(string[] arguments, TextWriter output, TextWriter errors)
    {
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        if (
            arguments.Length == 0
            || !double.TryParse(arguments[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds)
        )
        {
            errors.WriteLine("How many seconds? Then, if you like, a seed and the readers to try:");
            errors.WriteLine(string.Join(", ", AllTargets.Names));
            return 2;
        }
        if (arguments is [_, "pixels", var from])
            return Pixels(seconds, int.Parse(from, CultureInfo.InvariantCulture), output);
        int seed = arguments.Length > 1 ? int.Parse(arguments[1], CultureInfo.InvariantCulture) : 1;
        string[] names = arguments.Length > 2 ? arguments[2..] : [.. AllTargets.Names];
        int threads = Math.Min(names.Length, Environment.ProcessorCount);
        var runs = new FuzzRun[names.Length];
        TimeSpan each = TimeSpan.FromSeconds(seconds * threads / names.Length);
        Parallel.For(0, names.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
        {
            runs[i] = new FuzzRun(AllTargets.Make(names[i]));
            runs[i].Go(each, long.MaxValue, seed + i);
        });
        Print(runs, seed, output);
        foreach (FuzzRun run in runs)
            run.Keep(FoundFolder);
        return runs.Any(run => run.Faults.Count > 0) ? 1 : 0;
    }

    /// <summary><c>SECONDS pixels FIRST</c>: nights of nonsense through the whole path, from a seed on.</summary>
    private static int Pixels(double seconds, int first, TextWriter output)
    {
        int nights = 0;
        SortedDictionary<string, string> found = PixelRun.Go(
            first,
            int.MaxValue - first,
            TimeSpan.FromSeconds(seconds),
            (_, _) => nights++
        );
        output.WriteLine($"{nights} nights from seed {first}, {found.Count} kinds of faults");
        foreach ((string fault, string where) in found)
            output.WriteLine($"{where}: {fault}");
        return found.Count > 0 ? 1 : 0;
    }

    private static void Print(FuzzRun[] runs, int seed, TextWriter output)
    {
        output.WriteLine($"seed {seed}");
        output.WriteLine("| reader | inputs | refused | kinds of faults | slowest, ms | most allocated, MiB |");
        output.WriteLine("|---|---:|---:|---:|---:|---:|");
        foreach (FuzzRun run in runs)
            output.WriteLine(
                $"| {run.Name} | {run.Tried} | {run.Refused} | {run.Faults.Count} | {run.Slowest.TotalMilliseconds:F0} "
                    + $"| {run.MostAllocated / 1048576.0:F1} |"
            );
        output.WriteLine(
            $"| all | {runs.Sum(r => r.Tried)} | {runs.Sum(r => r.Refused)} | {runs.Sum(r => r.Faults.Count)} | | |"
        );
        foreach (FuzzRun run in runs)
        foreach (string fault in run.Faults.Keys)
            output.WriteLine($"{run.Name}: {fault}");
    }
}
