using System.Collections.Concurrent;
using SensorProfile.Reporting.Views;

namespace SensorProfile.Desk.Serving;

/// <summary>The results opened in the desk: nothing else on the disk is served.</summary>
internal sealed class ResultShelf
{
    private readonly ConcurrentDictionary<string, ShelvedResult> byPath = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<int, ShelvedResult> byNumber = new();
    private int last;

    /// <summary>The last folder opened; null before the first.</summary>
    public string? LastFolder { get; private set; }

    /// <summary>Opens results, or returns those already open; rereads them when the profile has changed.</summary>
    /// <exception cref="IOException">There is no profile, or it cannot be read.</exception>
    public ShelvedResult Open(string path)
    {
        string full = Path.GetFullPath(path);
        string file = Directory.Exists(full) ? Path.Combine(full, "profile.json") : full;
        DateTime written = File.GetLastWriteTimeUtc(file);
        if (byPath.TryGetValue(file, out ShelvedResult? known) && known.Written == written)
        {
            LastFolder = known.Result.Folder;
            return known;
        }
        ShelvedResult opened = new(Interlocked.Increment(ref last), written, StoredResult.Open(full));
        LastFolder = opened.Result.Folder;
        byNumber[opened.Number] = opened;
        byPath[file] = opened;
        if (known is not null)
            byNumber.TryRemove(known.Number, out _);
        return opened;
    }

    /// <summary>The results with a number; null when none were opened under it.</summary>
    public StoredResult? Find(int number) => byNumber.GetValueOrDefault(number)?.Result;
}

/// <summary>Results with the number that addresses them.</summary>
/// <param name="Number">The number used in addresses.</param>
/// <param name="Written">When the profile was written.</param>
/// <param name="Result">The results.</param>
internal sealed record ShelvedResult(int Number, DateTime Written, StoredResult Result)
{
    /// <summary>Address of one of its files.</summary>
    public string FileAddress(string name) =>
        $"result/{Number}/{string.Join('/', name.Split('/').Select(Uri.EscapeDataString))}";
}
