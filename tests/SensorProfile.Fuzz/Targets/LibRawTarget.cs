using SensorProfile.Cli.Tests.LibRaw;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Tests;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Fuzz.Targets;

/// <summary>Makers' raw files, each in a child process of its own: for runs by hand, as a child takes a quarter of a second.</summary>
/// <remarks>Files of the data folder that are small enough are spoilt, too, where there is one.</remarks>
internal static class LibRawTarget
{
    private const long MostSeedBytes = 5 << 20;

    // forms that LibRaw knows
    private static readonly string[] forms =
    [
        "words",
        "words, big-endian, preview",
        "packed",
        "lossless JPEG",
        "lossless JPEG, two components, tiles",
        "lossless JPEG, two components, two rows",
        "lossless JPEG, strips, restarts",
        "Deflate",
    ];

    public static Target Make() =>
        new(
            "LibRaw",
            [.. Seeds()],
            [.. "II*\0 MM\0* IIRO IIU\0 HEAPCCDR \0MRM FUJIFILM FOVb ftypcrx".Split(' ').Select(Bytes)],
            InputForm.Tiff,
            Read
        )
        {
            MostBytes = 64L << 20,
        };

    private static byte[] Bytes(string text) => System.Text.Encoding.ASCII.GetBytes(text);

    private static IEnumerable<byte[]> Seeds()
    {
        foreach (string form in forms)
            yield return TestFrames.Bytes(TestFrames.Noisy(96, 70, 14), TestFrames.Forms[form]);
        DngFrame makers = TestFrames.Noisy(96, 70, 14) with
        {
            Facts = new RawFacts { Camera = "Fell-24C", Software = "Fell" },
        };
        yield return MakersFile.FromDng(TestFrames.Bytes(makers, new DngForm()));
        yield return MakersFile.FromDng(
            TestFrames.Bytes(makers, new DngForm { Compression = RawCompression.LosslessJpeg })
        );
        string data = Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA") ?? "";
        foreach (string file in Directory.Exists(data) ? Directory.GetFiles(Path.Combine(data, "raw")) : [])
            if (Path.GetExtension(file) != ".md" && new FileInfo(file).Length < MostSeedBytes)
                yield return File.ReadAllBytes(file);
    }

    private static bool Read(byte[] bytes)
    {
        string path = Path.Combine(
            Path.GetTempPath(),
            $"fuzz-{Environment.ProcessId}-{Environment.CurrentManagedThreadId}.raw"
        );
        File.WriteAllBytes(path, bytes);
        try
        {
            LibRawFrame frame = LibRawDecoder.Run(path, (_, _, _) => { }, alsoDng: true);
            return frame.Mosaic.Width >= 1;
        }
        catch (RawFormatException refusal)
        {
            if (!refusal.Message.StartsWith("fuzz-", StringComparison.Ordinal))
                throw new InvalidOperationException("The refusal does not name the file.", refusal);
            return false;
        }
        finally
        {
            File.Delete(path);
        }
    }
}
