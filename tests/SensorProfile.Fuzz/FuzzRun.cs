using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using SensorProfile.Fuzz.Targets;

namespace SensorProfile.Fuzz;

/// <summary>What a run against one reader came to.</summary>
internal sealed class FuzzRun(Target target)
{
    private static readonly TimeSpan longest = TimeSpan.FromSeconds(20);
    private readonly Dictionary<string, byte[]> faults = new(StringComparer.Ordinal);

    public string Name => target.Name;

    public long Tried { get; private set; }

    public long Refused { get; private set; }

    public TimeSpan Slowest { get; private set; }

    public long MostAllocated { get; private set; }

    /// <summary>One input for every kind of fault: what was thrown and where.</summary>
    public IReadOnlyDictionary<string, byte[]> Faults => faults;

    /// <summary>Tries inputs until the time or their number is used up.</summary>
    public void Go(TimeSpan time, long most, int seed)
    {
        var mutator = new Mutator(target, new Random(seed));
        long start = Stopwatch.GetTimestamp();
        for (long i = 0; i < most && Stopwatch.GetElapsedTime(start) < time; i++)
            TryOne(mutator.Next());
    }

    /// <summary>Tries one input.</summary>
    public void TryOne(byte[] input)
    {
        Tried++;
        long before = GC.GetAllocatedBytesForCurrentThread(),
            start = Stopwatch.GetTimestamp();
        try
        {
            Refused += target.Try(input) ? 0 : 1;
        }
        catch (Exception fault)
        {
            faults.TryAdd(Signature(fault), input);
        }
        TimeSpan took = Stopwatch.GetElapsedTime(start);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        (Slowest, MostAllocated) = (took > Slowest ? took : Slowest, Math.Max(bytes, MostAllocated));
        if (bytes > target.MostBytes)
            faults.TryAdd($"{bytes >> 20} MiB allocated", input);
        if (took > longest)
            faults.TryAdd($"took {took.TotalSeconds.ToString("F0", CultureInfo.InvariantCulture)} s", input);
    }

    /// <summary>Keeps the faulty inputs, one folder per reader; they become fixtures once they are mended.</summary>
    public void Keep(string folder)
    {
        foreach ((string fault, byte[] input) in faults)
        {
            string place = Path.Combine(folder, target.Name.Replace(' ', '-'));
            Directory.CreateDirectory(place);
            string name = Convert.ToHexStringLower(SHA256.HashData(input))[..12];
            File.WriteAllBytes(Path.Combine(place, name + ".bin"), input);
            File.WriteAllText(Path.Combine(place, name + ".txt"), fault + "\n");
        }
    }

    private static string Signature(Exception fault)
    {
        string ours = string.Join(
            " < ",
            (fault.StackTrace ?? "")
                .Split('\n')
                .Where(line => line.Contains("SensorProfile", StringComparison.Ordinal))
                .Where(line => !line.Contains("SensorProfile.Fuzz", StringComparison.Ordinal))
                .Select(line => line.Trim().Split('(')[0])
                .Take(2)
        );
        string inner = fault.InnerException is { } cause ? $" ({cause.GetType().Name}: {cause.Message})" : "";
        return $"{fault.GetType().Name}: {fault.Message.Split('\n')[0]}{inner} | {ours}";
    }
}
