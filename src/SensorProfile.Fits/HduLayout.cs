using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

/// <summary>
/// The layout given by the mandatory keywords: kind of the HDU, axes and size of the data unit (FITS 4.0 §4.4.1).
/// </summary>
internal sealed class HduLayout
{
    private const int MaxAxes = 999;
    private const long MaxBytes = 1L << 60; // an exbibyte: no file is larger, and nothing overflows below it

    private readonly FileScan scan;
    private readonly FitsHeader header;
    private readonly long start;

    private HduLayout(FileScan scan, FitsHeader header, long start) =>
        (this.scan, this.header, this.start) = (scan, header, start);

    /// <summary>Kind of content; a tile-compressed image counts as a table here.</summary>
    public FitsHduKind Kind { get; private set; }

    /// <summary>BITPIX.</summary>
    public int Bitpix { get; private set; }

    /// <summary>NAXIS1, NAXIS2, …</summary>
    public long[] Axes { get; private set; } = [];

    /// <summary>Size of the data unit without its padding, bytes.</summary>
    public long DataBytes { get; private set; }

    /// <summary>Reads and checks the mandatory keywords.</summary>
    /// <exception cref="FitsFormatException">One is missing, has the wrong type, is out of range, or appears twice with
    /// different values.</exception>
    public static HduLayout Read(FileScan scan, FitsHeader header, long start)
    {
        var layout = new HduLayout(scan, header, start);
        long bitpix = layout.Mandatory("BITPIX", 1);
        if (bitpix is not (8 or 16 or 32 or 64 or -32 or -64))
            throw layout.Bad("BITPIX", "8, 16, 32, 64, -32 or -64");
        layout.Bitpix = (int)bitpix;
        layout.Axes = layout.ReadAxes("NAXIS", 2);
        layout.CheckRepeated();
        layout.CheckOrder();
        layout.FindKindAndSize();
        return layout;
    }

    private long[] ReadAxes(string keyword, int place)
    {
        long count = Mandatory(keyword, place);
        if (count is < 0 or > MaxAxes)
            throw Bad(keyword, $"0 to {MaxAxes}");
        var axes = new long[count];
        for (int i = 0; i < axes.Length; i++)
        {
            axes[i] = Mandatory($"{keyword}{i + 1}", place + 1 + i);
            if (axes[i] < 0)
                throw Bad($"{keyword}{i + 1}", "an integer of at least 0");
        }

        return axes;
    }

    private void FindKindAndSize()
    {
        if (scan.Hdu == 0)
        {
            if (header.Logical("SIMPLE") != true)
                scan.Warn(
                    FitsWarningCodes.NotConforming,
                    "SIMPLE",
                    header.Card("SIMPLE")?.ByteOffset,
                    "SIMPLE is not T: the file says of itself that it does not follow the standard; it is read "
                        + "all the same."
                );
            if (Axes is [0, _, ..] && header.Logical("GROUPS") == true)
            {
                Kind = FitsHduKind.Other;
                (long parameters, long groups) = (Count("PCOUNT", 0), Count("GCOUNT", 1));
                DataBytes = Times(Plus(parameters, Product(Axes.AsSpan(1), 2), "PCOUNT"), groups, "GCOUNT");
                return;
            }

            DataBytes = Product(Axes, 1);
            Kind = DataBytes == 0 ? FitsHduKind.NoData : FitsHduKind.Image;
            return;
        }

        long parameterCount = CountOfExtension("PCOUNT", 0),
            repeats = CountOfExtension("GCOUNT", 1),
            array = Product(Axes, 1);
        DataBytes = Times(Plus(parameterCount, array, "PCOUNT"), repeats, "GCOUNT");
        Kind = header.Text("XTENSION") switch
        {
            "IMAGE" or "IUEIMAGE" => array == 0 || repeats == 0 ? FitsHduKind.NoData : FitsHduKind.Image,
            "TABLE" or "BINTABLE" or "A3DTABLE" => FitsHduKind.Table,
            _ => FitsHduKind.Other,
        };
    }

    /// <summary>|BITPIX|/8 × product of the axes; an axis of 0 makes it 0.</summary>
    private long Product(ReadOnlySpan<long> axes, int firstAxis)
    {
        if (axes.Length == 0 || axes.Contains(0))
            return 0;
        long product = Math.Abs(Bitpix) / 8;
        for (int i = 0; i < axes.Length; i++)
            product = Times(product, axes[i], $"NAXIS{firstAxis + i}");
        return product;
    }

    private long Times(long a, long b, string keyword) =>
        a != 0 && b > MaxBytes / a ? throw Bad(keyword, "a data unit that a file can hold") : a * b;

    /// <summary>Adds PCOUNT elements (of |BITPIX|/8 bytes) to a size in bytes.</summary>
    private long Plus(long elements, long bytes, string keyword) =>
        Times(Math.Abs(Bitpix) / 8, elements, keyword) is var more && more > MaxBytes - bytes
            ? throw Bad(keyword, "a data unit that a file can hold")
            : bytes + more;

    private long CountOfExtension(string keyword, long usual)
    {
        if (!header.Contains(keyword))
            scan.Warn(
                FitsWarningCodes.MissingKeyword,
                keyword,
                null,
                $"the extension has no {keyword}; {usual} was taken."
            );
        return Count(keyword, usual);
    }

    private long Count(string keyword, long usual)
    {
        if (!header.Contains(keyword))
            return usual;
        return header.Integer(keyword) is >= 0 and var count ? count : throw Bad(keyword, "an integer of at least 0");
    }

    private long Mandatory(string keyword, int place)
    {
        if (!header.Contains(keyword))
            throw scan.Fault(
                keyword,
                start + (place * CardParser.RecordBytes),
                $"the mandatory keyword {keyword} is missing."
            );
        return header.Integer(keyword) ?? throw Bad(keyword, "an integer");
    }

    private FitsFormatException Bad(string keyword, string expected)
    {
        FitsCard? card = header.Card(keyword);
        string found =
            card is { Kind: FitsValueKind.Text } ? $"the string '{card.Value}'"
            : card is null ? "nothing"
            : $"'{card.Value}'";
        return scan.Fault(keyword, card?.ByteOffset, $"expected {expected}, found {found}.");
    }

    private void CheckRepeated()
    {
        foreach (FitsCard card in header.Repeated)
        {
            if (
                card.Keyword is "BITPIX" or "PCOUNT" or "GCOUNT" or "BZERO" or "BSCALE" or "BLANK"
                || card.Keyword.StartsWith("NAXIS", StringComparison.Ordinal)
            )
                throw scan.Fault(
                    card.Keyword,
                    card.ByteOffset,
                    $"the keyword appears twice, with '{header.Card(card.Keyword)!.Value}' and '{card.Value}', so "
                        + "the layout of the pixels is unknown."
                );
        }
    }

    private void CheckOrder()
    {
        for (int i = 0; i < Axes.Length + 2; i++)
        {
            string expected = i switch
            {
                0 => "BITPIX",
                1 => "NAXIS",
                _ => $"NAXIS{i - 1}",
            };
            FitsCard found = header[i + 1];
            if (found.Keyword == expected)
                continue;
            scan.Warn(
                FitsWarningCodes.KeywordOrder,
                found.Keyword,
                found.ByteOffset,
                $"expected {expected} as card {i + 2} of the header, found {found.Keyword}; the values are clear "
                    + "all the same."
            );
            return;
        }
    }
}
