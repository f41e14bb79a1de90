using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Facts;
using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.Mosaics;

namespace SensorProfile.Raw;

/// <summary>
/// An open DNG, TIFF/EP or TIFF file with one mosaic. Headers are read on opening, samples on request.
/// </summary>
/// <remarks>
/// Safe to read from several threads; one thread at a time decodes the samples of a file. Rows are decoded in file
/// order: going far back within a compressed strip or tile means decoding it again from its start. Continuing does not,
/// even after <see cref="Park"/>; nor, with lossless JPEG, does returning to where one of the last eight reads began.
/// </remarks>
/// <example><code>
/// using RawFile file = RawFile.Open("dark_0012.dng");
/// ushort[] row = new ushort[file.Mosaic.Width];
/// file.ReadRows(0, row);
/// </code></example>
public sealed class RawFile : IDisposable
{
    private readonly RawBytes source;
    private readonly MosaicRows rows;

    private RawFile(RawBytes source)
    {
        this.source = source;
        var warnings = new List<RawWarning>();
        TiffFile file = TiffFile.Read(source);
        warnings.AddRange(file.Warnings);
        FoundMosaic found = MosaicFinder.Find(file, warnings);
        SegmentLayout layout = SegmentLayout.Read(found.Directory, SampleCoding.Read(found.Directory, found.Version));
        if (layout.Coding.Compression == RawCompression.LosslessJpeg)
            JpegHeader.CheckKind(new SegmentBytes(found.Directory, layout.At(0, 0)));
        Mosaic = MosaicDescription.Describe(found, layout, warnings);
        Storage = new RawStorage(
            found.Container,
            found.Version,
            layout.Coding.Compression,
            layout.Coding.Bits,
            layout.Coding.IsBigEndian,
            layout.IsTiled,
            layout.SegmentWidth,
            layout.SegmentHeight,
            found.Directory.Index
        )
        {
            Exposures = found.Exposures,
        };
        Facts = FactsReader.Read(file, found.Directory, Mosaic.Linearisation, warnings);
        Warnings = warnings;
        rows = new MosaicRows(found.Directory, layout);
    }

    /// <summary>Path as given.</summary>
    public string Path => source.File;

    /// <summary>Size, colours, levels and borders of the mosaic.</summary>
    public RawMosaic Mosaic { get; }

    /// <summary>How the samples are stored in the file.</summary>
    public RawStorage Storage { get; }

    /// <summary>What the file states about how the frame was taken.</summary>
    public RawFacts Facts { get; }

    /// <summary>Oddities that do not prevent the mosaic from being read.</summary>
    public IReadOnlyList<RawWarning> Warnings { get; }

    /// <summary>
    /// Whether a file with these first bytes may be one for this reader: TIFF or BigTIFF of either byte order. Four
    /// bytes are enough.
    /// </summary>
    public static bool MayBe(ReadOnlySpan<byte> firstBytes) =>
        firstBytes is [0x49, 0x49, 42 or 43, 0, ..] or [0x4D, 0x4D, 0, 42 or 43, ..];

    /// <summary>Opens a file for reading and reads all its headers.</summary>
    /// <exception cref="RawFormatException">The file holds no mosaic that this reader supports, or is
    /// damaged.</exception>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">Permission to read the file is missing.</exception>
    public static RawFile Open(string path) => Open(new FileBytes(path));

    /// <summary>
    /// Like <see cref="Open(string)"/>; the source is disposed of with the file, or when it cannot be opened.
    /// </summary>
    internal static RawFile Open(RawBytes source)
    {
        try
        {
            return new RawFile(source);
        }
        catch
        {
            source.Dispose();
            throw;
        }
    }

    /// <summary>Reads whole rows of the active area, codes as stored.</summary>
    /// <param name="firstRow">First row of the active area, from 0.</param>
    /// <param name="samples">Buffer for a whole number of rows of <see cref="RawMosaic.Width"/>.</param>
    /// <exception cref="RawFormatException">The samples are damaged, or the file has changed since it was
    /// opened.</exception>
    /// <exception cref="ArgumentException">The span does not hold a whole number of rows, or the rows lie outside the
    /// area.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        RawArea active = Mosaic.ActiveArea;
        CheckRows(firstRow, samples.Length, active.Width, active.Height);
        rows.Read(active.Top + firstRow, active.Left, active.Width, samples);
    }

    /// <summary>Reads whole rows of all stored samples, including masked borders, codes as stored.</summary>
    /// <param name="firstRow">First row of the sensor, from 0.</param>
    /// <param name="samples">Buffer for a whole number of rows of <see cref="RawMosaic.SensorWidth"/>.</param>
    /// <inheritdoc cref="ReadRows" path="/exception"/>
    public void ReadSensorRows(int firstRow, Span<ushort> samples)
    {
        CheckRows(firstRow, samples.Length, Mosaic.SensorWidth, Mosaic.SensorHeight);
        rows.Read(firstRow, 0, Mosaic.SensorWidth, samples);
    }

    /// <summary>
    /// Releases the file handle and buffers, but keeps headers and the position in the mosaic; the next read opens the
    /// file again.
    /// </summary>
    /// <remarks>
    /// For hundreds of frames that are read in turn, a few rows each. Not to be called while another thread reads.
    /// </remarks>
    public void Park()
    {
        rows.Park();
        source.Park();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        rows.Dispose();
        source.Dispose();
    }

    private static void CheckRows(int firstRow, int samples, int width, int height)
    {
        if (samples % width != 0)
            throw new ArgumentException(
                $"Room for {samples} samples is not a whole number of rows of {width}.",
                nameof(samples)
            );
        ArgumentOutOfRangeException.ThrowIfNegative(firstRow);
        ArgumentOutOfRangeException.ThrowIfGreaterThan((long)firstRow + (samples / width), height, nameof(firstRow));
    }
}
