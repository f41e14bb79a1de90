using BenchmarkDotNet.Attributes;
using Microsoft.Win32.SafeHandles;
using SensorProfile.Cli.Tests.LibRaw;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Benchmarks.Raw;

/// <summary>
/// Opening and decoding a 12-megapixel DNG from the page cache, in every form; the baseline only reads the bytes of the
/// same file, as cat does.
/// </summary>
/// <remarks>
/// 14 bits, bias-like noise of 8 codes and some bright pixels: about 6 bits per sample as lossless JPEG.
/// </remarks>
[MinColumn]
public class RawDecodeBenchmark : IDisposable
{
    internal const int Pixels = Width * Height;
    private const int Width = 4000;
    private const int Height = 3000;
    private const int RowsPerStrip = 60;
    private readonly string folder = Directory.CreateTempSubdirectory("raw-").FullName;
    private readonly ushort[] strip = new ushort[Width * RowsPerStrip];
    private readonly byte[] bytes = new byte[1 << 18];
    private string path = "";

    public static IEnumerable<string> Forms => [.. forms.Keys, TiffLzw, TiffDeflate, MakersWords];

    /// <summary>Why a form cannot be measured on this system; null when it can.</summary>
    internal static string? Lacking(string form) => IsMakers(form) ? LibRawLibrary.Load().Problem : null;

    private const string TiffLzw = "TIFF, LZW",
        TiffDeflate = "TIFF, Deflate",
        MakersWords = "maker's words, LibRaw";

    private static bool IsMakers(string form) => form == MakersWords;

    private static readonly Dictionary<string, DngForm> forms = new()
    {
        ["words"] = new(),
        ["words, big-endian"] = new() { IsBigEndian = true },
        ["14 bits packed"] = new() { IsPacked = true },
        ["word tiles"] = new() { TileSide = 256 },
        ["JPEG"] = new() { Compression = RawCompression.LosslessJpeg },
        ["JPEG, 2, tiles"] = new()
        {
            Compression = RawCompression.LosslessJpeg,
            JpegComponents = 2,
            TileSide = 256,
        },
        ["JPEG, predictor 7"] = new() { Compression = RawCompression.LosslessJpeg, JpegPredictor = 7 },
        ["Deflate"] = new() { Compression = RawCompression.Deflate },
        ["Deflate, diff."] = new() { Compression = RawCompression.Deflate, DifferenceDistance = 1 },
    };

    [ParamsSource(nameof(Forms))]
    public string Form { get; set; } = "";

    [GlobalSetup]
    public void Setup()
    {
        ushort[] samples = Samples();
        path = Path.Combine(folder, "frame.dng");
        var filter = new RawColourFilter(RawColour.Red, RawColour.Green, RawColour.Green, RawColour.Blue);
        var frame = new DngFrame
        {
            Width = Width,
            Height = Height,
            BitsPerSample = 14,
            Samples = samples,
            ColourFilter = filter,
        };
        if (Form is TiffLzw or TiffDeflate)
            PlainTiff.Write(path, samples, Width, RowsPerStrip, isLzw: Form == TiffLzw);
        else if (IsMakers(Form))
        {
            WriteMakers(frame);
            return;
        }
        else
            DngWriter.Write(path, frame, forms[Form], overwrite: true);
        var read = new ushort[samples.Length];
        using RawFile file = RawFile.Open(path);
        file.ReadRows(0, read);
        if (!read.AsSpan().SequenceEqual(samples))
            throw new InvalidOperationException("The frame was not read as it was written.");
    }

    [Benchmark(Baseline = true)]
    public void ReadBytes()
    {
        using SafeFileHandle handle = File.OpenHandle(path);
        long at = 0;
        for (int read = -1; read != 0; at += read)
            read = RandomAccess.Read(handle, bytes, at);
    }

    [Benchmark]
    public void DecodeRows()
    {
        if (IsMakers(Form))
        {
            LibRawDecoder.Decode(path, (_, _, _) => { });
            return;
        }
        using RawFile file = RawFile.Open(path);
        for (int row = 0; row < Height; row += RowsPerStrip)
            file.ReadRows(row, strip);
    }

    private void WriteMakers(DngFrame frame)
    {
        DngFrame own = frame with
        {
            Facts = new RawFacts { Camera = "Fell-24C", Software = "Fell" },
        };
        using var stream = new MemoryStream();
        DngWriter.Write(stream, own, new DngForm());
        path = Path.Combine(folder, "frame.raw");
        File.WriteAllBytes(path, MakersFile.FromDng(stream.ToArray()));
        LibRawDecoder.Decode(path, (_, first, rows) =>
        {
            if (!rows.Span.SequenceEqual(own.Samples.Span.Slice(first * Width, rows.Length)))
                throw new InvalidOperationException("The frame was not read as it was written.");
        });
    }

    [GlobalCleanup]
    public void Dispose()
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    private static ushort[] Samples()
    {
        var random = new Random(1);
        var samples = new ushort[Width * Height];
        foreach (ref ushort sample in samples.AsSpan())
        {
            // Box and Muller: a normal deviate from two uniform ones.
            double normal =
                Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            sample = (ushort)Math.Round(1024 + (8 * normal) + (random.Next(3000) == 0 ? random.Next(8000) : 0));
        }
        return samples;
    }
}
