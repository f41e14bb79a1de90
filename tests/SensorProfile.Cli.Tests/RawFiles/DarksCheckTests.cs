using System.Text.Json;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>Masters in FITS form against fresh darks of the same camera in DNG form.</summary>
public sealed class DarksCheckTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void EverySentenceSpeaksOfIso()
    {
        Write("fresh", "dng", 800, 8);
        Write("old", "fits", 800, 1);
        Write("other", "fits", 1600, 1);
        string[] masters = [Frame("old"), Frame("other")];
        JsonElement answer = folder
            .Command.Run(["darks", "check", .. masters, "--against", "fresh", "--names-say", "--json"])
            .Expect(ExitCodes.Answered)
            .Json;
        JsonElement[] verdicts = [.. answer.GetProperty("masters").EnumerateArray()];
        Assert.NotEqual("cannot-tell", verdicts[0].GetProperty("verdict").GetString());
        Assert.Contains(
            "the fresh darks were taken at ISO 800, the master at ISO 1600",
            verdicts[1].GetProperty("reason").GetString(),
            StringComparison.Ordinal
        );
        Assert.Contains(answer.GetProperty("shoot").EnumerateArray(), s =>
            s.GetProperty("reason").GetString()!.Contains("ISO 1600", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void MastersOfAnotherFormAreAskedForAsFits()
    {
        Write("fresh", "dng", 800, 2);
        CommandRun run = folder.Command.Run("darks", "check", "fresh", "--against", "fresh", "--names-say");
        Assert.Contains("export them as FITS", run.Expect(ExitCodes.UnreadableInput).Error, StringComparison.Ordinal);
    }

    private string Frame(string name) =>
        Path.GetRelativePath(
            folder.Path,
            Directory.GetFiles(folder[name], "dark*.fits").Order(StringComparer.Ordinal).First()
        );

    private void Write(string name, string files, int iso, int frames) =>
        SimulatedNight.Write(
            folder[name],
            $$"""
            { "name": "Fell-24C", "serial": 8, "width": 160, "height": 120, "bits": 14, "codeStep": 4, "gain": 0.45,
              "readNoise": 3.2, "biasLevel": 2048, "cooled": false, "files": "{{files}}", "start": "2031-10-21T17:30:00Z",
              "darkCurrent": { "rateAtReference": 0.15, "referenceTemperature": 10, "doublingTemperature": 6 },
              "settings": { "gain": null, "offset": null, "iso": {{iso}} },
              "shots": [ { "kind": "bias", "temperature": 12, "count": 4 },
                         { "kind": "dark", "exposure": 60, "temperature": 12, "count": {{frames}} } ] }
            """
        );
}
