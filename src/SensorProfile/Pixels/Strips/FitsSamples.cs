using SensorProfile.Fits;
using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>The samples of a frame in a FITS file, read at their place whenever they are asked for.</summary>
/// <remarks>
/// Opened at the first read. A frame that is not kept open takes a file handle only while it is read.
/// </remarks>
internal sealed class FitsSamples(Frame frame, bool keepOpen) : IFrameSamples, IDisposable
{
    private const double MostBlank = 0.001; // of a frame's pixels
    private const double MostBlankOfRow = 0.1;

    private readonly Lock _gate = new();
    private FitsFile? _file;
    private FitsHdu? _image;

    /// <inheritdoc/>
    public string Name => frame.Name;

    /// <inheritdoc/>
    public int Width => frame.Width;

    /// <inheritdoc/>
    public int Height => frame.Height;

    /// <inheritdoc/>
    public void ReadRows(int firstRow, Span<ushort> samples)
    {
        if (keepOpen)
        {
            Read(KeptImage(), firstRow, samples);
            return;
        }
        using var file = FitsFile.Open(frame.Path);
        Read(ImageOf(file), firstRow, samples);
    }

    /// <summary>
    /// Pixels without a value (blank, or not a number), as <see cref="Fault"/> counted them; what their nearest
    /// neighbour
    /// of the same colour in the row holds stands for them.
    /// </summary>
    public long Blank { get; private set; }

    private void Read(FitsHdu image, int firstRow, Span<ushort> samples)
    {
        if (Blank == 0)
        {
            image.ReadRows(firstRow, samples);
            return;
        }
        double[] values = new double[samples.Length];
        image.ReadRows(firstRow, values);
        for (int start = 0; start < values.Length; start += Width)
        {
            ReadOnlySpan<double> row = values.AsSpan(start, Width);
            for (int x = 0; x < Width; x++)
                samples[start + x] = (ushort)(double.IsNaN(row[x]) ? Neighbour(row, x) : row[x]);
        }
    }

    // Two columns further stands the same colour, whatever the filter array.
    private static double Neighbour(ReadOnlySpan<double> row, int x)
    {
        for (int distance = 2; distance < row.Length; distance += 2)
        {
            if (x >= distance && !double.IsNaN(row[x - distance]))
                return row[x - distance];
            if (x + distance < row.Length && !double.IsNaN(row[x + distance]))
                return row[x + distance];
        }
        return 0; // cannot be: most of every row has values
    }

    /// <summary>
    /// Says why the frame cannot be measured, or null when it can: every sample must be a whole number from 0 to 65535.
    /// </summary>
    /// <remarks>
    /// Where the stored type alone says so, only the last row is read, to know that it is there; otherwise all of them
    /// are.
    /// </remarks>
    public string? Fault()
    {
        try
        {
            using var file = FitsFile.Open(frame.Path);
            var image = ImageOf(file);
            if (image.Width != Width || image.Height != Height)
                return $"{Name} is {image.Width} × {image.Height} px, but was {Width} × {Height} px when it was "
                    + "listed; list the frames again.";
            if (image.PixelType is not (FitsPixelType.UInt8 or FitsPixelType.UInt16) || image.Blank is not null)
                return FaultOfValues(image);
            image.ReadRows(Height - 1, new ushort[Width]);
            return null;
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            return unreadable is FitsFormatException format ? format.Statement : unreadable.Message;
        }
    }

    /// <inheritdoc/>
    /// <remarks>
    /// DATASUM alone: a header that was edited afterwards contradicts CHECKSUM without a pixel being touched.
    /// </remarks>
    public string? Damage()
    {
        using var file = FitsFile.Open(frame.Path);
        return
            ImageOf(file) is { } image
            && !image.VerifyChecksum(out var problem)
            && problem!.Location.Keyword == "DATASUM"
            ? problem.Message
            : null;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            _file?.Dispose();
            (_file, _image) = (null, null);
        }
    }

    private FitsHdu KeptImage()
    {
        if (Volatile.Read(ref _image) is { } open)
            return open;
        lock (_gate)
        {
            _file ??= FitsFile.Open(frame.Path);
            return _image ??= ImageOf(_file);
        }
    }

    private FitsHdu ImageOf(FitsFile file) =>
        file.Hdus.FirstOrDefault(hdu => hdu.Index == frame.Hdu)
        ?? throw new IOException($"{Name} has no readable image in HDU {frame.Hdu}; list the frames again.");

    private string? FaultOfValues(FitsHdu image)
    {
        var row = new double[Width];
        long blank = 0;
        for (int y = 0; y < Height; y++)
        {
            image.ReadRows(y, row);
            int before = row.Count(double.IsNaN);
            blank += before;
            for (int x = 0; x < row.Length; x++)
                if (
                    !(row[x] >= 0 && row[x] <= ushort.MaxValue && row[x] == Math.Floor(row[x]))
                    && !(double.IsNaN(row[x]) && before <= MostBlankOfRow * Width)
                )
                    return Refusal(row[x], x, y);
        }
        if (blank > MostBlank * Width * Height)
            return FormattableString.Invariant(
                $"{Name} has no value at {blank} of its {(long)Width * Height} pixels; only raw frames can be measured, leave it out."
            );
        Blank = blank;
        return null;
    }

    private string Refusal(double value, int x, int y)
    {
        string kind =
            value < 0 ? "a negative value"
            : value > ushort.MaxValue ? "a value above 65535"
            : double.IsNaN(value) ? "a pixel without a value"
            : "a fractional value";
        return string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Name} looks calibrated or stacked: it holds {kind} ({value}, at column {x + 1}, row {y + 1}). "
                + $"Only raw frames can be measured; leave it out or give the raw frames instead."
        );
    }
}
