using System.Globalization;
using SensorProfile.Fuzz.Targets;
using Xunit.Abstractions;

namespace SensorProfile.Fuzz;

/// <summary>Every reader reads an input or refuses it in the documented way; nothing else, and never much memory.</summary>
/// <remarks>SENSORPROFILE_FUZZ_SECONDS sets the time for all readers together; without it the run is short.
/// SENSORPROFILE_FUZZ_SEED sets the seed: the build takes that of the commit, so that every commit tries new inputs and a
/// failure can be had again.</remarks>
public sealed class ReaderTests(ITestOutputHelper output)
{
    private const int OrdinaryInputs = 2_000,
        OrdinarySeed = 20_260;

    public static TheoryData<string> Readers => [.. AllTargets.Names];

    [Theory, MemberData(nameof(Readers))]
    public void SpoiltInputsAreReadOrRefused(string reader)
    {
        FuzzRun run = new(AllTargets.Make(reader));
        int seed = int.TryParse(Asked("SEED"), NumberStyles.None, CultureInfo.InvariantCulture, out int given)
            ? given
            : OrdinarySeed;
        if (double.TryParse(Asked("SECONDS"), NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds))
            run.Go(TimeSpan.FromSeconds(seconds / AllTargets.Names.Count()), long.MaxValue, seed);
        else
            run.Go(TimeSpan.MaxValue, OrdinaryInputs, seed);
        output.WriteLine(
            $"seed {seed}: {run.Tried} inputs, {run.Refused} refused, slowest {run.Slowest.TotalMilliseconds:F0} ms, most allocated "
                + $"{run.MostAllocated >> 20} MiB"
        );
        if (run.Faults.Count > 0)
            run.Keep(Path.Combine(AppContext.BaseDirectory, "fuzz-found"));
        Assert.Empty(run.Faults.Keys);
        Assert.InRange(run.Refused, run.Tried / 20, run.Tried - (run.Tried / 100)); // some of both, or nothing was tried
    }

    [Theory, MemberData(nameof(Readers))]
    public void SeedsAreRead(string reader)
    {
        Target target = AllTargets.Make(reader);
        Assert.All(target.Seeds, seed => Assert.True(target.Try(seed)));
    }

    /// <summary>Inputs that once made a reader throw something undocumented.</summary>
    [Theory, MemberData(nameof(Readers))]
    public void InputsThatOnceBrokeAReaderDoNotAnyMore(string reader)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "Found", reader.Replace(' ', '-'));
        FuzzRun run = new(AllTargets.Make(reader));
        foreach (string file in Directory.Exists(folder) ? Directory.GetFiles(folder) : [])
            run.TryOne(File.ReadAllBytes(file));
        Assert.Empty(run.Faults.Keys);
    }

    private static string? Asked(string what) => Environment.GetEnvironmentVariable("SENSORPROFILE_FUZZ_" + what);
}
