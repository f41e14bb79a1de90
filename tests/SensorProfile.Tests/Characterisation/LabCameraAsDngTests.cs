using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using SensorProfile.Characterisation;
using SensorProfile.Fits;
using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Raw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Tests.Characterisation;

/// <summary>
/// The frames of a real camera, rewritten as DNG in many forms, give the profile of its FITS files to the last digit:
/// of most forms, in the usual suite, the one without laws and trials of single pixels, which reads all frames too.
/// </summary>
public sealed class LabCameraAsDngTests : IDisposable
{
    private const string Camera = "lab-12bit";

    // its 12 bits are stored shifted left by 4, as 16 bits
    private const int StoredBits = 16,
        Shift = 4;

    // through all trials also in the usual suite: strips and a byte order that is not the machine's, and tiles of a JPEG
    private static readonly string[] whole = ["big-endian, strips, preview", "lossless JPEG, two components, tiles"];

    private static readonly ConcurrentDictionary<(int Bits, bool Quick), Lazy<string>> ofFits = [];

    private static readonly Dictionary<string, (DngForm Form, int Bits)> forms = new()
    {
        ["little-endian"] = (new DngForm(), StoredBits),
        ["big-endian, strips, preview"] = (
            new DngForm
            {
                IsBigEndian = true,
                RowsPerStrip = 40,
                HasPreview = true,
            },
            StoredBits
        ),
        ["packed 12 bits"] = (new DngForm { IsPacked = true }, 12),
        ["packed 14 bits"] = (new DngForm { IsPacked = true, IsBigEndian = true }, 14),
        ["tiles"] = (new DngForm { TileSide = 128 }, StoredBits),
        ["lossless JPEG, one component"] = (
            new DngForm { Compression = RawCompression.LosslessJpeg, JpegPredictor = 6 },
            StoredBits
        ),
        ["lossless JPEG, two components, tiles"] = (
            new DngForm
            {
                Compression = RawCompression.LosslessJpeg,
                JpegComponents = 2,
                TileSide = 256,
            },
            StoredBits
        ),
        ["Deflate"] = (
            new DngForm
            {
                Compression = RawCompression.Deflate,
                DifferenceDistance = 2,
                TileSide = 64,
            },
            StoredBits
        ),
    };

    private readonly string folder = Directory.CreateTempSubdirectory("lab-").FullName;

    public static TheoryData<string> Forms => [.. forms.Keys];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [DataTheory(Camera), MemberData(nameof(Forms))]
    public void TheProfileIsThatOfTheFitsFiles(string name)
    {
        (DngForm form, int bits) = forms[name];
        foreach ((string file, FitsHdu image, RawFacts facts, RawColourFilter colours) in Originals())
        {
            string path = Path.Combine(folder, Path.ChangeExtension(file, ".dng"));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            var frame = new DngFrame
            {
                Width = image.Width,
                Height = image.Height,
                Samples = Shifted(image, StoredBits - bits),
                BitsPerSample = bits,
                ColourFilter = colours,
                Facts = facts,
            };
            DngWriter.Write(path, frame, form);
        }
        bool quick = !LongRuns.On && !whole.Contains(name);
        string expected = ofFits
            .GetOrAdd((bits, quick), form => new Lazy<string>(() => ProfileOfFits(form.Bits, form.Quick)))
            .Value;
        Assert.Equal(expected, Quantities(folder, ".dng", quick));
    }

    /// <summary>
    /// The original files; with fewer bits, files of the same codes without the zeros at their end.
    /// </summary>
    private static string ProfileOfFits(int bits, bool quick)
    {
        if (bits == StoredBits)
            return Quantities(TestData.Path(Camera), ".fits", quick);
        string place = Directory.CreateTempSubdirectory("lab-fits-").FullName;
        try
        {
            foreach ((string file, FitsHdu image, _, _) in Originals())
            {
                string path = Path.Combine(place, file);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                FitsCard[] cards =
                [
                    .. image.Header.Where(c =>
                        c.Keyword is "DATE-OBS" or "BAYERPAT" or "INSTRUME" or "GAIN" or "OFFSET"
                    ),
                ];
                FitsWriter.Write(
                    path,
                    new FitsImage<ushort>(image.Width, image.Height, Shifted(image, StoredBits - bits), cards)
                );
            }
            return Quantities(place, ".fits", quick);
        }
        finally
        {
            Directory.Delete(place, recursive: true);
        }
    }

    private static IEnumerable<(string File, FitsHdu Image, RawFacts Facts, RawColourFilter Colours)> Originals()
    {
        Inventory inventory = FrameInventory.Read([TestData.Path(Camera)], new InventoryOptions());
        Assert.InRange(inventory.Frames.Count, 50, 70);
        foreach (Frame frame in inventory.Frames)
        {
            using FitsFile file = FitsFile.Open(frame.Path);
            RawColour[] colours = [.. frame.ColourFilter!.Select(Colour)];
            var facts = new RawFacts
            {
                Camera = frame.Camera,
                Iso = 100,
                Time = new RawTime(frame.StartUtc!.Value.DateTime, TimeSpan.Zero),
            };
            yield return (
                frame.Name,
                file.FirstImage!,
                facts,
                new RawColourFilter(colours[0], colours[1], colours[2], colours[3])
            );
        }
    }

    private static RawColour Colour(char letter) =>
        letter switch
        {
            'R' => RawColour.Red,
            'G' => RawColour.Green,
            _ => RawColour.Blue,
        };

    private static ushort[] Shifted(FitsHdu image, int shift)
    {
        var samples = new ushort[image.Width * image.Height];
        image.ReadRows(0, samples);
        foreach (ref ushort sample in samples.AsSpan())
        {
            Assert.Equal(0, sample & ((1 << Shift) - 1));
            sample >>= shift;
        }
        return samples;
    }

    /// <summary>
    /// Camera and modes of the profile, every digit, without the settings, which differ by intent (ISO for gain).
    /// </summary>
    private static string Quantities(string place, string extension, bool quick)
    {
        Inventory inventory = FrameInventory.Read(
            [place],
            new InventoryOptions { Table = LabCameraTests.Table(TestData.Path(Camera), extension) }
        );
        CameraProfile profile = Characteriser.Run(inventory, new CharacterisationOptions { Quick = quick }).Profile;
        string file = Path.Combine(Path.GetTempPath(), $"sensorprofile-{Guid.NewGuid():N}.json");
        try
        {
            ProfileFile.Write(file, profile);
            JsonNode document = JsonNode.Parse(File.ReadAllText(file))!;
            JsonArray modes = document["modes"]!.AsArray();
            JsonObject mode = Assert.Single(modes)!.AsObject();
            Assert.True(mode.Remove("settings"));
            string text = document["camera"]!.ToJsonString() + "\n" + mode.ToJsonString();
            Assert.True(text.Length > 5000);
            return text.Replace(".dng", ".fits", StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
