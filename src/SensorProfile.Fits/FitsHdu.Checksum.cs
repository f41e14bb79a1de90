using System.Buffers;
using System.Globalization;
using SensorProfile.Fits.Bytes;

namespace SensorProfile.Fits;

public sealed partial class FitsHdu
{
    private const int ChecksumBytes = 1 << 18;

    /// <summary>Whether the header holds DATASUM or CHECKSUM.</summary>
    public bool HasChecksum => Header.Contains("DATASUM") || Header.Contains("CHECKSUM");

    /// <summary>Verifies DATASUM and CHECKSUM against the bytes (FITS 4.0 §4.4.2.7). Reads the whole HDU.</summary>
    /// <param name="problem">The mismatch; null when there is none.</param>
    /// <returns>False when a sum contradicts the bytes; true when the sums match or there are none.</returns>
    public bool VerifyChecksum(out FitsWarning? problem)
    {
        problem = null;
        if (!HasChecksum)
            return true;
        uint data = SumOf(Extent.DataStart, Extent.End, 0);
        FitsCard? dataSum = Header.Card("DATASUM"),
            checksum = Header.Card("CHECKSUM");
        bool known = uint.TryParse(dataSum?.Value, NumberStyles.None, CultureInfo.InvariantCulture, out uint expected);
        if (known && expected != data)
        {
            problem = Mismatch(
                dataSum!,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"DATASUM says {expected}, the data add up to {data}: they were damaged or changed after the sum "
                        + $"was written."
                )
            );
        }
        else if (
            checksum is { Kind: FitsValueKind.Text, Value: not "" }
            && SumOf(Extent.HeaderStart, Extent.DataStart, data) is not (0 or uint.MaxValue)
        )
        {
            problem = Mismatch(
                checksum,
                "CHECKSUM does not match: the header or the data were damaged or changed after the sum was written."
            );
        }

        return problem is null;
    }

    private FitsWarning Mismatch(FitsCard card, string message) =>
        new(
            FitsWarningCodes.ChecksumMismatch,
            Extent.Location with
            {
                Keyword = card.Keyword,
                ByteOffset = card.ByteOffset,
            },
            message
        );

    /// <summary>Sums a range of the file; padding missing at its end counts as zeros.</summary>
    private uint SumOf(long start, long end, uint sum)
    {
        byte[] buffer = ArrayPool<byte>.Shared.Rent(ChecksumBytes);
        for (long at = start; at < end; at += ChecksumBytes)
        {
            int read = Extent.Source.Read(at, buffer.AsSpan(0, (int)Math.Min(ChecksumBytes, end - at)));
            sum = Checksum.Add(sum, buffer.AsSpan(0, read));
        }

        ArrayPool<byte>.Shared.Return(buffer);
        return sum;
    }
}
