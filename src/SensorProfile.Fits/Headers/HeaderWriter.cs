using System.Globalization;
using System.Text;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits.Headers;

/// <summary>Makes the header of an image.</summary>
internal sealed class HeaderWriter
{
    private const string Zeros = "0000000000000000";

    private readonly List<byte> records = [];
    private int checksumAt;

    private HeaderWriter() { }

    /// <summary>The finished header, whole blocks, with DATASUM and CHECKSUM.</summary>
    /// <param name="image">The image.</param>
    /// <param name="hdu">0 for the primary HDU.</param>
    /// <param name="extensions">Whether extensions follow.</param>
    /// <param name="dataSum">Sum of the data unit with its padding.</param>
    public static byte[] Header(FitsImage image, int hdu, bool extensions, uint dataSum)
    {
        var writer = new HeaderWriter();
        writer.Mandatory(image, hdu, extensions);
        writer.Given(image, hdu);
        writer.Sums(dataSum);
        writer.WriteLine("END");
        byte[] header = [.. writer.records, .. Encoding.ASCII.GetBytes(new string(' ', writer.Padding()))];
        string checksum = Checksum.Encode(Checksum.Add(dataSum, header));
        Encoding.ASCII.GetBytes(checksum, header.AsSpan(writer.checksumAt, Checksum.EncodedLength));
        return header;
    }

    private void Mandatory(FitsImage image, int hdu, bool extensions)
    {
        WriteLine(
            hdu == 0 ? "SIMPLE  =                    T / FITS 4.0" : "XTENSION= 'IMAGE   '           / image extension"
        );
        Integer("BITPIX", image.Bitpix, "bits per pixel; negative: IEEE floating point");
        Integer("NAXIS", image.Axes.Count, "number of axes");
        for (int i = 0; i < image.Axes.Count; i++)
            Integer(
                $"NAXIS{i + 1}",
                image.Axes[i],
                i switch
                {
                    0 => "columns",
                    1 => "rows",
                    _ => "planes",
                }
            );
        if (hdu > 0)
            Integer("PCOUNT", 0, "no further bytes");
        if (hdu > 0)
            Integer("GCOUNT", 1, "one data unit");
        if (hdu == 0 && extensions)
            WriteLine("EXTEND  =                    T / extensions follow");
        if (image.Zero is not null)
            WriteLine($"BZERO   = {image.Zero, 20} / value = BZERO + BSCALE x stored number");
        if (image.Zero is not null)
            WriteLine("BSCALE  =                    1");
        if (image.Name is not null)
            records.AddRange(CardText.Records(FitsCard.Of("EXTNAME", image.Name)));
    }

    private void Given(FitsImage image, int hdu)
    {
        bool announced = image.Cards.Any(card => card.Keyword == "LONGSTRN");
        foreach (FitsCard card in image.Cards)
        {
            if (IsLayout(card, image, hdu))
                continue;
            byte[] lines = CardText.Records(card);
            if (card.Kind == FitsValueKind.Text && lines.Length > CardParser.RecordBytes && !announced)
            {
                // older readers look for this card
                records.AddRange(CardText.Records(FitsCard.Of("LONGSTRN", "OGIP 1.0", "long strings by CONTINUE")));
                announced = true;
            }

            records.AddRange(lines);
        }
    }

    private void Sums(uint dataSum)
    {
        WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"DATASUM = '{dataSum, -8}'").PadRight(30)
                + " / sum of the data unit"
        );
        checksumAt = records.Count + 11;
        WriteLine($"CHECKSUM= '{Zeros}'   / sum of the HDU");
    }

    private void Integer(string keyword, long value, string comment) =>
        WriteLine(string.Create(CultureInfo.InvariantCulture, $"{keyword, -8}= {value, 20} / {comment}"));

    private void WriteLine(string text) =>
        records.AddRange(Encoding.ASCII.GetBytes(text.PadRight(CardParser.RecordBytes)));

    private int Padding() =>
        (HeaderReader.BlockBytes - (records.Count % HeaderReader.BlockBytes)) % HeaderReader.BlockBytes;

    /// <summary>Whether the card describes the layout of the file it came from.</summary>
    private static bool IsLayout(FitsCard card, FitsImage image, int hdu) =>
        card.Keyword switch
        {
            "SIMPLE"
            or "XTENSION"
            or "BITPIX"
            or "NAXIS"
            or "PCOUNT"
            or "GCOUNT"
            or "EXTEND"
            or "BSCALE"
            or "BZERO"
            or "GROUPS" => true,
            "END" or "DATASUM" or "CHECKSUM" => true,
            // of the table that held a compressed image
            "ZIMAGE"
            or "ZCMPTYPE"
            or "ZBITPIX"
            or "ZSIMPLE"
            or "ZEXTEND"
            or "ZTENSION"
            or "ZPCOUNT"
            or "ZGCOUNT"
            or "ZQUANTIZ"
            or "ZDITHER0" => true,
            "ZBLANK" or "ZSCALE" or "ZZERO" or "ZHECKSUM" or "ZDATASUM" or "TFIELDS" or "THEAP" => true,
            "EXTNAME" => image.Name is not null,
            "INHERIT" => hdu == 0,
            "BLANK" => image.Bitpix < 0,
            var keyword => keyword.AsSpan().TrimEnd("0123456789")
                is "NAXIS"
                    or "ZNAXIS"
                    or "ZTILE"
                    or "ZNAME"
                    or "ZVAL"
                    or "TTYPE"
                    or "TFORM",
        };
}
