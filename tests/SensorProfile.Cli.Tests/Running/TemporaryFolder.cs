using System.Security.Cryptography;

namespace SensorProfile.Cli.Tests.Running;

/// <summary>A folder that goes away with the test.</summary>
internal sealed partial class TemporaryFolder : IDisposable
{
    public TemporaryFolder() => Path = Directory.CreateTempSubdirectory("sensorprofile-test-").FullName;

    public string Path { get; }

    public string this[string relative] => System.IO.Path.Combine(Path, relative);

    /// <summary>Every file below, with the digest of its content.</summary>
    public static SortedDictionary<string, string> Digests(string folder) =>
        new(
            Directory
                .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .ToDictionary(
                    file => System.IO.Path.GetRelativePath(folder, file),
                    file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file)))
                ),
            StringComparer.Ordinal
        );

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
