using BenchmarkDotNet.Attributes;
using Microsoft.Win32.SafeHandles;
using SensorProfile.Fits;

namespace SensorProfile.Benchmarks.Fits;

/// <summary>A 9-megapixel camera frame from and to the page cache; the baseline only copies its bytes.</summary>
public class FrameFileBenchmark : IDisposable
{
    private const int Width = 3000,
        Height = 3000,
        RowsPerStrip = 64;
    private readonly string folder = Directory.CreateTempSubdirectory("fits-").FullName;
    private readonly ushort[] pixels = new ushort[Width * Height],
        strip = new ushort[Width * RowsPerStrip];
    private readonly byte[] stripBytes = new byte[2 * Width * RowsPerStrip];
    private readonly float[] floats = new float[Width * RowsPerStrip];
    private FitsFile file = null!;
    private FitsHdu image = null!;
    private SafeFileHandle handle = null!;

    [GlobalSetup]
    public void Setup()
    {
        for (int i = 0; i < pixels.Length; i++)
            pixels[i] = (ushort)(i * 40503);
        string path = Path.Combine(folder, "frame.fits");
        FitsWriter.Write(path, new FitsImage<ushort>(Width, Height, pixels));
        file = FitsFile.Open(path);
        image = file.RequireFirstImage();
        handle = File.OpenHandle(path);
        ushort[] read = new ushort[pixels.Length];
        image.ReadRows(0, read);
        if (!read.AsSpan().SequenceEqual(pixels))
            throw new InvalidOperationException("The frame was not read as it was written.");
    }

    [Benchmark(Baseline = true)]
    public void CopyBytes()
    {
        for (int row = 0; row + RowsPerStrip <= Height; row += RowsPerStrip)
            RandomAccess.Read(handle, stripBytes, 2880 + (2L * Width * row));
    }

    [Benchmark]
    public void ReadRowsUInt16()
    {
        for (int row = 0; row + RowsPerStrip <= Height; row += RowsPerStrip)
            image.ReadRows(row, strip);
    }

    [Benchmark]
    public void ReadRowsFloat()
    {
        for (int row = 0; row + RowsPerStrip <= Height; row += RowsPerStrip)
            image.ReadRows(row, floats);
    }

    [Benchmark]
    public bool VerifyChecksum() => image.VerifyChecksum(out _);

    [Benchmark]
    public void Write() =>
        FitsWriter.Write(
            Path.Combine(folder, "written.fits"),
            new FitsImage<ushort>(Width, Height, pixels),
            overwrite: true,
            durable: false
        );

    [GlobalCleanup]
    public void Dispose()
    {
        handle?.Dispose();
        file?.Dispose();
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        GC.SuppressFinalize(this);
    }
}
