namespace SensorProfile.Raw.Mosaics;

/// <summary>Uncompressed samples: bytes, 16-bit numbers, or packed bits.</summary>
internal sealed class PlainDecoder : SegmentDecoder
{
    private readonly SampleRow form;

    public PlainDecoder(SegmentBytes bytes, SampleCoding coding)
        : base(bytes) => form = new SampleRow(coding.StoredBits, coding.IsBigEndian, 0);

    protected override int GoTo(int row)
    {
        Bytes.MoveTo((long)row * form.Bytes(Width));
        return row;
    }

    protected override void Restart() => Bytes.MoveTo(0);

    protected override void Decode(Span<ushort> row) => form.Read(Bytes.Take(form.Bytes(Width)), row);
}
