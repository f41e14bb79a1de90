using System.Diagnostics;
using System.Globalization;

namespace SensorProfile.Fuzz.Pixels;

/// <summary>Nights of nonsense by seed, each through the whole path.</summary>
internal static class PixelRun
{
    /// <summary>Tries nights one after the other.</summary>
    /// <returns>One line for every kind of fault, with the seed and the nonsense it came from.</returns>
    public static SortedDictionary<string, string> Go(
        int first,
        int nights,
        TimeSpan time,
        Action<int, string>? tried = null
    )
    {
        SortedDictionary<string, string> found = new(StringComparer.Ordinal);
        long start = Stopwatch.GetTimestamp();
        for (int seed = first; seed < first + nights && Stopwatch.GetElapsedTime(start) < time; seed++)
        {
            string folder = Directory.CreateTempSubdirectory("nonsense-").FullName;
            try
            {
                string frames = Path.Combine(folder, "frames"),
                    done = NonsenseNight.Write(frames, seed);
                var path = new WholePath(folder);
                path.Go(frames, seed);
                foreach (string fault in path.Faults)
                    found.TryAdd(
                        Short(fault).Replace(folder, "", StringComparison.Ordinal),
                        string.Create(CultureInfo.InvariantCulture, $"seed {seed} ({done})")
                    );
                tried?.Invoke(seed, done);
            }
            finally
            {
                if (Environment.GetEnvironmentVariable("SENSORPROFILE_FUZZ_KEEP") is null)
                    Directory.Delete(folder, recursive: true);
            }
        }
        return found;
    }

    private static string Short(string fault) => fault.Length > 400 ? fault[..400] + "…" : fault;
}
