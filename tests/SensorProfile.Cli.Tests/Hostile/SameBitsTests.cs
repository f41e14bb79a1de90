using System.IO.Compression;
using System.Text.Json.Nodes;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Hostile;

/// <summary>The same frames give the same bytes on any number of processors, vector width, locale, time zone, in any
/// order, packed or not.</summary>
public sealed class SameBitsTests(SameBitsTests.Reference reference) : IClassFixture<SameBitsTests.Reference>
{
    [Theory]
    [InlineData("DOTNET_PROCESSOR_COUNT=1 LC_ALL=tr_TR.UTF-8")]
    [InlineData("DOTNET_PROCESSOR_COUNT=16 TZ=Pacific/Kiritimati")]
    [InlineData("DOTNET_PROCESSOR_COUNT=2 DOTNET_EnableAVX2=0")]
    [InlineData("DOTNET_EnableAVX512=0")]
    [InlineData("DOTNET_EnableHWIntrinsic=0")]
    public void TheSurroundingsDoNotMatter(string variables)
    {
        using var folder = new TemporaryFolder();
        Run(folder, variables, reference.Night);
        Assert.Equal(reference.Digests, TemporaryFolder.Digests(folder["out"]));
    }

    [Fact]
    public void TheOrderOfTheFilesDoesNotMatter()
    {
        using var folder = new TemporaryFolder();
        Run(folder, "", [.. Directory.GetFiles(reference.Night, "*.fits").OrderDescending(StringComparer.Ordinal)]);
        Assert.Equal(reference.Digests, TemporaryFolder.Digests(folder["out"]));
    }

    /// <summary>Names and digests of packed files differ; every number is the same.</summary>
    [Fact]
    public void PackedFramesGiveTheSameNumbers()
    {
        using var folder = new TemporaryFolder();
        Directory.CreateDirectory(folder["night"]);
        foreach (string file in Directory.GetFiles(reference.Night, "*.fits"))
        {
            using FileStream to = File.Create(Path.Combine(folder["night"], Path.GetFileName(file) + ".gz"));
            using var gzip = new GZipStream(to, CompressionLevel.Fastest);
            using FileStream from = File.OpenRead(file);
            from.CopyTo(gzip);
        }
        Run(folder, "", folder["night"]);
        JsonObject one = Profile(Path.Combine(reference.Folder["out"], "profile.json")),
            other = Profile(folder["out/profile.json"]);
        Assert.Equal(
            one["modes"]!.ToJsonString(),
            other["modes"]!.ToJsonString().Replace(".fits.gz", ".fits", StringComparison.Ordinal)
        );
        Assert.Equal(one["camera"]!.ToJsonString(), other["camera"]!.ToJsonString());
    }

    private static JsonObject Profile(string file) => JsonNode.Parse(File.ReadAllText(file))!.AsObject();

    private static void Run(TemporaryFolder folder, string variables, params string[] paths)
    {
        var surroundings = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = "1949904000" };
        foreach (string variable in variables.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = variable.Split('=');
            surroundings[parts[0]] = parts[1];
        }
        SensorProfileCommand command = folder.Command with { Environment = surroundings };
        command.Run(["characterise", .. paths, "--out", "out"]).Expect(ExitCodes.Answered);
    }

    public sealed class Reference : IDisposable
    {
        public Reference()
        {
            Night = Folder["night"];
            Running.SimulatedNight.Write(Night, Running.SimulatedNight.Full);
            Run(Folder, "", Night);
            Digests = TemporaryFolder.Digests(Folder["out"]);
        }

        internal TemporaryFolder Folder { get; } = new();

        internal string Night { get; }

        internal SortedDictionary<string, string> Digests { get; }

        public void Dispose() => Folder.Dispose();
    }
}
