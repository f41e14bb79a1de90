using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits;

/// <summary>An open FITS file. Headers are read on opening, pixels on request.</summary>
/// <example><code>
/// using FitsFile file = FitsFile.Open("dark_0012.fits");
/// FitsHdu image = file.RequireFirstImage();
/// ushort[] row = new ushort[image.Width];
/// image.ReadRows(0, row);
/// </code></example>
public sealed class FitsFile : IDisposable
{
    private readonly ByteSource source;

    private FitsFile(ByteSource source, HduScanner scanner)
    {
        this.source = source;
        (Hdus, Errors, Warnings) = (scanner.Hdus, scanner.Errors, scanner.Warnings);
        FirstImage = Hdus.FirstOrDefault(hdu => hdu.HasPixels && hdu.Axes.Count >= 2);
    }

    /// <summary>Path as given.</summary>
    public string Path => source.File;

    /// <summary>
    /// The usable HDUs, in file order. A broken one is missing here; see <see cref="Errors"/>.
    /// </summary>
    public IReadOnlyList<FitsHdu> Hdus { get; }

    /// <summary>
    /// The faults of the unusable HDUs; empty for a good file. Each is also a warning.
    /// </summary>
    public IReadOnlyList<FitsFormatException> Errors { get; }

    /// <summary>Oddities that do not prevent the good HDUs from being read.</summary>
    public IReadOnlyList<FitsWarning> Warnings { get; }

    /// <summary>The first image with at least two axes and with pixels; null when there is none.</summary>
    public FitsHdu? FirstImage { get; }

    /// <summary>The first image with at least two axes.</summary>
    /// <exception cref="FitsFormatException">There is none; if an HDU is broken, the reason is that of the first broken
    /// one.</exception>
    public FitsHdu RequireFirstImage() =>
        FirstImage
        ?? throw (
            Errors.Count > 0
                ? Errors[0]
                : new FitsFormatException(
                    new FitsLocation(Path),
                    "the file holds no image with two axes.",
                    "Leave it out."
                )
        );

    /// <summary>Opens a file for reading, gzipped or not, and reads all its headers.</summary>
    /// <exception cref="FitsFormatException">No HDU of the file can be used.</exception>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">Permission to read the file is missing.</exception>
    public static FitsFile Open(string path) => Open(ByteSource.Open(path));

    /// <summary>
    /// Like <see cref="Open(string)"/>; the source is disposed of with the file, or when it cannot be opened.
    /// </summary>
    internal static FitsFile Open(ByteSource source)
    {
        try
        {
            var scanner = new HduScanner(source);
            scanner.Walk();
            return scanner.Hdus.Count == 0 ? throw scanner.Errors[0] : new FitsFile(source, scanner);
        }
        catch
        {
            source.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => source.Dispose();
}
