using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

/// <summary>
/// Walks a file from HDU to HDU. An unusable one is recorded, and the walk continues where the next one can still be
/// found.
/// </summary>
internal sealed class HduScanner(ByteSource source)
{
    private const int MaxHdus = 10_000;

    private readonly FileScan scan = new(source);
    private readonly List<FitsHdu> hdus = [];
    private readonly List<FitsFormatException> errors = [];

    /// <summary>The usable HDUs.</summary>
    public IReadOnlyList<FitsHdu> Hdus => hdus;

    /// <summary>The faults of the unusable ones.</summary>
    public IReadOnlyList<FitsFormatException> Errors => errors;

    /// <summary>Warnings.</summary>
    public IReadOnlyList<FitsWarning> Warnings => scan.Warnings;

    /// <summary>Walks the whole file.</summary>
    public void Walk()
    {
        long? start = 0;
        while (start is { } at)
        {
            if (scan.Hdu == MaxHdus)
            {
                Note(scan.Fault(null, at, $"the file has more than {MaxHdus} HDUs; the rest is not looked at."));
                return;
            }

            try
            {
                start = ReadHdu(at);
            }
            catch (FitsFormatException e)
            {
                Note(e);
                return;
            }

            scan.Hdu++;
        }
    }

    /// <summary>Reads one HDU and returns the start of the next; null after the last one.</summary>
    private long? ReadHdu(long start)
    {
        FitsHeader header = HeaderReader.Read(scan, start, out long dataStart);
        HduLayout layout = HduLayout.Read(scan, header, start);
        var extent = new HduExtent(source, scan.At(null, null), start, dataStart, layout.DataBytes);
        bool complete = CheckLength(extent, header);
        try
        {
            hdus.Add(HduFactory.Create(scan, extent, header, layout));
        }
        catch (FitsFormatException e)
        {
            Note(e);
        }

        return complete && HasNext(extent.End) ? extent.End : null;
    }

    /// <summary>Checks that the whole HDU is there, padding included.</summary>
    /// <exception cref="FitsFormatException">Data are missing.</exception>
    private bool CheckLength(HduExtent extent, FitsHeader header)
    {
        long dataEnd = extent.DataStart + extent.DataBytes;
        if (dataEnd > source.MaximumLength && source is GzipByteSource)
            throw scan.Truncated(
                source.MaximumLength,
                extent.DataStart,
                dataEnd,
                "the data unit, whatever it unpacks to",
                LastAxis(header),
                header.Card(LastAxis(header) ?? "")?.ByteOffset
            );
        long available = source.AvailableUpTo(extent.End);
        if (available < dataEnd)
            throw scan.Truncated(available, extent.DataStart, dataEnd, "the data unit");
        if (available == extent.End)
            return true;
        if (source.Damage is { } damage)
            throw damage;
        scan.Warn(
            FitsWarningCodes.MissingPadding,
            null,
            available,
            $"the last block is not filled up: {extent.End - available} bytes of padding are missing; all pixels "
                + "are there."
        );
        return false;
    }

    private static string? LastAxis(FitsHeader header) =>
        header.Integer("NAXIS") is > 0 and var count ? $"NAXIS{count}" : null;

    private bool HasNext(long end)
    {
        Span<byte> beginning = stackalloc byte[9];
        int read = source.Read(end, beginning);
        if (source.Damage is { } damage)
            throw damage;
        if (read == 0)
            return false;
        if (beginning[..read].SequenceEqual("XTENSION="u8))
            return true;
        scan.Hdu++;
        string howMany = source is FileByteSource file ? $"{file.Length - end} bytes" : "bytes";
        scan.Warn(
            FitsWarningCodes.ExtraBytes,
            null,
            end,
            $"{howMany} after the last HDU are not an extension; they are left out."
        );
        return false;
    }

    private void Note(FitsFormatException error)
    {
        errors.Add(error);
        scan.Warnings.Add(
            new FitsWarning(FitsWarningCodes.BrokenHdu, error.Location, $"{error.Problem} {error.Remedy}")
        );
    }
}
