using System.Text;
using SensorProfile.Cli;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Drift.Archive;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Setup;
using SensorProfile.Simulation;
using SensorProfile.Tests.Profiles;
using Night = SensorProfile.Cli.Tests.Running.SimulatedNight;

namespace SensorProfile.Fuzz.Targets;

/// <summary>What people and this program write as text: tables, thresholds, setups, cameras, profiles, archives.</summary>
internal static class TextTargets
{
    private const string File = "fuzzed.txt";

    private static readonly byte[][] words =
    [
        .. new[]
        {
            "\"",
            "\\ud800",
            "\\u0000",
            "\0",
            "\uFEFF",
            "null",
            "true",
            "{}",
            "[]",
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            ";",
            "\t",
            "\r\n",
            "//",
            "/*",
            "\"a\":1,",
            "\"schemaVersion\":1,",
            "-",
            "\u202E",
            "\u001b[2J",
            "𝔘",
            "é",
            "=1+1",
            "\"\"\"",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF],
        [0xC3],
        [0xED, 0xA0, 0x80],
    ];

    public static Target CaptureTables()
    {
        ScannedFile[] files =
        [
            new("/night/dark_0001.fits", "dark_0001.fits", FileContent.Fits),
            new("/night/a/flat 1.fits", "a/flat 1.fits", FileContent.Fits),
            new("/night/b/flat 1.fits", "b/flat 1.fits", FileContent.Fits),
        ];
        return new Target(
            "capture table",
            [.. TableSeeds().Select(Encoding.UTF8.GetBytes)],
            words,
            InputForm.Text,
            bytes =>
            {
                try
                {
                    TableMatching.Match(files, CaptureTable.Parse(File, bytes));
                    return true;
                }
                catch (CaptureTableException)
                {
                    return false;
                }
            }
        );
    }

    private static string[] TableSeeds() =>
        [
            "file,kind,exposure_s,temperature_c,gain,offset,iso,binning,set,use\r\n"
                + "dark_0001.fits,dark,30,-10.5,100,30,,1x1,a,yes\r\n\"a/flat 1.fits\",flat,0.5,,100,30,,,\"b, \"\"c\"\"\",no\r\n",
            "file;exposure_s;temperature_c\nb/flat 1.fits;1,5;-10,25\n/night/dark_0001.fits;30;−5\n",
            "FILE\tKind\tUse\ndark_0001.fits\tbias\t1\n",
        ];

    public static Target Thresholds() =>
        Json(
            "thresholds",
            [
                "{ \"hotRate\": 0.5, \"warmRate\": 0.1 }",
                "// mine\n{ \"hotRate\": 5e-1, \"coldShare\": 0.2, }",
                Encoding.UTF8.GetString(ProfileFile.ToUtf8(TarnWhole())),
            ],
            bytes =>
            {
                (DefectThresholds thresholds, _) = ThresholdFile.Parse(bytes, File);
                if (thresholds.Problem() is { } problem)
                    throw new InvalidOperationException($"Accepted: {problem}");
            }
        );

    public static Target Setups() =>
        Json(
            "setup",
            [
                """
                { "telescope": { "focalRatio": 5, "efficiency": 0.4 }, "camera": { "profile": "tarn", "pixelMicrometres": 3.76 },
                  "sky": { "brightness": 20.5 }, "filters": [ { "name": "Ha", "bandwidthNanometres": 7, "centreNanometres": 656 } ],
                  "stack": { "exposure": 300, "lights": 40, "ditherPositions": 20, "rejection": "sigma-clip" },
                  "cooling": { "reach": 35, "nights": "nights.csv" }, "acceptedLoss": 5 }
                """,
            ],
            bytes =>
            {
                byte[] again = SetupFile.ToUtf8(SetupFile.Parse(bytes, File));
                SetupFile.Parse(again, File); // what is accepted can be written and read again
            }
        );

    public static Target Cameras() =>
        Json(
            "camera to simulate",
            [Night.Full, Night.DarksOnly, Resource("tarn-9m.json"), Resource("fell-24c.json")],
            bytes => CameraDescription.Parse(bytes, File)
        );

    public static Target Profiles() =>
        Json(
            "profile",
            [
                Encoding.UTF8.GetString(ProfileFile.ToUtf8(TarnWhole())),
                Encoding.UTF8.GetString(ProfileFile.ToUtf8(FilledProfile.Build())),
            ],
            bytes => ProfileFile.ToUtf8(ProfileFile.Parse(bytes, File))
        );

    public static Target Nights() =>
        new(
            "nights",
            [
                .. new[]
                {
                    "night,temperature\n2026-07-14,19.5\n2026-07-15,−3\n2026-07-16,22\n",
                    "\"Samstag\";19,5\n\n\"Sonntag\";20,25\n",
                    "19.5\n20\n",
                }.Select(Encoding.UTF8.GetBytes),
            ],
            words,
            InputForm.Text,
            bytes =>
            {
                try
                {
                    TemperatureTable.Parse(Encoding.UTF8.GetString(bytes).Split('\n'), File);
                    return true;
                }
                catch (CommandFailure)
                {
                    return false;
                }
            }
        );

    /// <summary>The two texts of an archive's list of hot pixels, with a line between them.</summary>
    public static Target HotPixelLists()
    {
        const string between = "\n====\n";
        string folder = Path.Combine(AppContext.BaseDirectory, "Seeds", "archive");
        string list = System.IO.File.ReadAllText(Path.Combine(folder, "hot-pixels.csv")),
            notes = System.IO.File.ReadAllText(Path.Combine(folder, "hot-pixels.json"));
        string[] lines = list.Split("\r\n");
        string few = string.Join("\r\n", lines[..12]) + "\r\n";
        string notesOfFew = System.Text.RegularExpressions.Regex.Replace(notes, "\"pixels\": [0-9]+", "\"pixels\": 11");
        return new Target(
            "hot-pixel list",
            [Encoding.UTF8.GetBytes(notesOfFew + between + few)],
            words,
            InputForm.Text,
            bytes =>
            {
                int cut = bytes.AsSpan().IndexOf(Encoding.UTF8.GetBytes(between));
                if (cut < 0)
                    return false;
                try
                {
                    using var text = new StreamReader(new MemoryStream(bytes[(cut + between.Length)..]));
                    ListedRates rates = HotPixelListFile.Parse(
                        text,
                        bytes.AsSpan(0, cut),
                        "hot-pixels.csv",
                        "hot-pixels.json"
                    );
                    foreach (int index in rates.Above(double.NegativeInfinity).Take(100))
                        _ = (rates.At(index), rates.Doubling(index), rates.Flickers(index));
                    return true;
                }
                catch (Exception problem) when (problem is InvalidDataException or ProfileFormatException)
                {
                    return false;
                }
            }
        );
    }

    /// <summary>A profile with a filled mode of the invented camera.</summary>
    internal static CameraProfile TarnWhole()
    {
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            TarnProfile.Write(file);
            return ProfileFile.Read(file);
        }
        finally
        {
            System.IO.File.Delete(file);
        }
    }

    private static Target Json(string name, string[] seeds, Action<byte[]> read) =>
        new(name, [.. seeds.Select(Encoding.UTF8.GetBytes)], words, InputForm.Text, bytes =>
        {
            try
            {
                read(bytes);
                return true;
            }
            catch (Exception problem)
                when (problem is ProfileFormatException or SetupFormatException or CameraDescriptionException)
            {
                return false;
            }
        });

    private static string Resource(string name)
    {
        using Stream stream = typeof(Simulator).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
