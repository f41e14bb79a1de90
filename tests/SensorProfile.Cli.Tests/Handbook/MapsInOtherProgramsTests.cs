using System.Text.Json;
using System.Text.RegularExpressions;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Fits.Tests;

namespace SensorProfile.Cli.Tests.Handbook;

/// <summary>A general reader of FITS files opens every map, and finds what the handbook says is in it.</summary>
[Collection(DemoNight.Shared)]
public sealed partial class MapsInOtherProgramsTests(DemoNight night)
{
    private const string Python = "/usr/bin/python3";

    private const string Script = """
        import glob, json, os, sys, warnings
        import numpy
        warnings.simplefilter("error")
        from astropy.io import fits
        maps = {}
        for path in sorted(glob.glob(os.path.join(sys.argv[1], "*.fits"))):
            with fits.open(path, checksum=True) as file:
                file.verify("exception")
                data, header = file[0].data, file[0].header
                maps[os.path.basename(path)] = {
                    "type": data.dtype.name,
                    "shape": list(data.shape),
                    "unit": header["BUNIT"],
                    "keywords": {k: str(header[k]) for k in header if k not in ("COMMENT", "HISTORY", "")},
                    "median": None if data.dtype.kind != "f" else float(numpy.nanmedian(data)),
                }
        print(json.dumps(maps))
        """;

    [NeedsProgramFact(Python, "python3-astropy", "-c", "import astropy")]
    public void AstropyOpensEveryMapAndTheHandbookKnowsIt()
    {
        string folder = night.Folder["sensorprofile-demo/maps"];
        (int exit, string output) = ExternalTool.Run(Python, "-c", Script, folder);
        Assert.True(exit == 0, output);
        using JsonDocument maps = JsonDocument.Parse(output);
        Dictionary<string, string> units = Documented();
        string page = File.ReadAllText(Checkout.File("reports/handbook/files.md"));

        JsonProperty[] found = [.. maps.RootElement.EnumerateObject()];
        // the demo knows its gain: the map in ADU is the only one that it does not write
        Assert.Equal(units.Keys.Where(name => name != "dark-rate-adu.fits").Order(), found.Select(m => m.Name).Order());
        foreach (JsonProperty map in found)
        {
            JsonElement facts = map.Value;
            bool classes = map.Name == "defects.fits";
            Assert.Equal(classes ? "uint8" : "float32", facts.GetProperty("type").GetString());
            Assert.Equal([480, 640], facts.GetProperty("shape").EnumerateArray().Select(n => n.GetInt32()));
            Assert.Equal(classes ? "none, 8 bits" : facts.GetProperty("unit").GetString(), units[map.Name]);
            Assert.All(
                facts.GetProperty("keywords").EnumerateObject().Where(k => !OfTheStandard().IsMatch(k.Name)),
                keyword => Assert.Contains($"`{keyword.Name}`", page, StringComparison.Ordinal)
            );
        }
        // the demo's camera reads with 1.6 e⁻ of noise, as its description says
        Assert.InRange(maps.RootElement.GetProperty("read-noise.fits").GetProperty("median").GetDouble(), 1.5, 1.7);
        JsonElement hot = maps.RootElement.GetProperty("defects.fits").GetProperty("keywords");
        foreach (Match row in ClassRow().Matches(page))
            Assert.Equal(row.Groups["number"].Value, hot.GetProperty(row.Groups["keyword"].Value).GetString());
        Assert.Equal(8, ClassRow().Count(page));
    }

    /// <summary>Unit by file, from the table of the page.</summary>
    private static Dictionary<string, string> Documented() =>
        MapRow()
            .Matches(File.ReadAllText(Checkout.File("reports/handbook/files.md")))
            .ToDictionary(row => row.Groups["file"].Value, row => row.Groups["unit"].Value.Trim());

    [GeneratedRegex(@"^\| `(?<file>[a-z-]+\.fits)` \|(?<unit>[^|]+)\|", RegexOptions.Multiline)]
    private static partial Regex MapRow();

    [GeneratedRegex(@"^\| [a-z ]+ \| (?<number>\d+) \| `(?<keyword>DEF[A-Z]+)` \|", RegexOptions.Multiline)]
    private static partial Regex ClassRow();

    /// <summary>Keywords of the standard and of its checksums, which a reader knows.</summary>
    [GeneratedRegex("^(SIMPLE|BITPIX|NAXIS[0-9]*|EXTEND|BZERO|BSCALE|BLANK|CHECKSUM|DATASUM|DATE)$")]
    private static partial Regex OfTheStandard();
}
