using SensorProfile.Fits;
using SensorProfile.Frames;

namespace SensorProfile.Pixels.Strips;

/// <summary>The samples of a frame in a FITS file, read in place on demand.</summary>
/// <remarks>Opened at the first read. A frame that is not kept open uses a file handle only while it is read.</remarks>
internal sealed class FitsSamples(Frame frame, bool keepOpen) : IFrameSamples, IDisposable
{
    /// <summary>Largest share of a frame's pixels without a value; with more, they cannot be filled in.</summary>
    public const double MaxBlank = 0.5;

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

    /// <inheritdoc/>
    public MissingPixels? Missing { get; private set; }

    /// <summary>Pixels of this frame without a value, as <see cref="Fault"/> counted them.</summary>
    public long Blank { get; private set; }

    /// <summary>
    /// Leaves out the pixels that any frame of the stack lacks, so that all frames substitute the same ones.
    /// </summary>
    public void Share(MissingPixels missing) => Missing = missing;

    private void Read(FitsHdu image, int firstRow, Span<ushort> samples)
    {
        ReadStored(image, firstRow, samples);
        Missing?.Fill(samples, firstRow, (row, other) => ReadStored(image, row, other));
    }

    private void ReadStored(FitsHdu image, int firstRow, Span<ushort> samples)
    {
        if (Blank == 0)
        {
            image.ReadRows(firstRow, samples);
            return;
        }
        double[] values = new double[samples.Length];
        image.ReadRows(firstRow, values);
        for (int i = 0; i < values.Length; i++)
            samples[i] = double.IsNaN(values[i]) ? (ushort)0 : (ushort)values[i];
    }

    /// <summary>
    /// Says why the frame cannot be measured, or null when it can: every sample must be a whole number from 0 to 65535.
    /// </summary>
    /// <remarks>
    /// Where the stored type alone guarantees this, only the last row is read, to check that it is there; otherwise all
    /// rows are.
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
    /// Checks DATASUM only: a header edited afterwards contradicts CHECKSUM although no pixel was touched.
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
        var missing = new MissingPixels(Width, Height);
        for (int y = 0; y < Height; y++)
        {
            image.ReadRows(y, row);
            for (int x = 0; x < row.Length; x++)
                if (double.IsNaN(row[x]))
                    missing.Add(x, y);
                else if (!(row[x] >= 0 && row[x] <= ushort.MaxValue && row[x] == Math.Floor(row[x])))
                    return Refusal(row[x], x, y);
        }
        long blank = missing.Count;
        if (blank > MaxBlank * Width * Height)
            return FormattableString.Invariant(
                $"{Name} has no value at {blank} of its {(long)Width * Height} pixels, more than half; leave it out."
            );
        if (blank > 0)
            (Blank, Missing) = (blank, missing);
        return null;
    }

    private string Refusal(double value, int x, int y)
    {
        string kind =
            value < 0 ? "a negative value"
            : value > ushort.MaxValue ? "a value above 65535"
            : "a fractional value";
        return string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Name} looks calibrated or stacked: it holds {kind} ({value}, at column {x + 1}, row {y + 1}). "
                + $"Only raw frames can be measured; leave it out or give the raw frames instead."
        );
    }
}
