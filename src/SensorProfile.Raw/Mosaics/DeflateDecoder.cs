using System.IO.Compression;

namespace SensorProfile.Raw.Mosaics;

/// <summary>Samples compressed with Deflate in a zlib envelope.</summary>
internal sealed class DeflateDecoder : SegmentDecoder
{
    private readonly SampleRow form;
    private readonly byte[] row;
    private ZLibStream? stream;

    public DeflateDecoder(SegmentBytes bytes, SampleCoding coding)
        : base(bytes)
    {
        form = new SampleRow(coding.Bits, coding.IsBigEndian, coding.Distance);
        row = new byte[form.Bytes(Width)];
    }

    public override void Dispose()
    {
        stream?.Dispose();
        base.Dispose();
    }

    protected override void Restart()
    {
        stream?.Dispose();
        stream = null;
    }

    protected override void Decode(Span<ushort> samples)
    {
        if (stream is null)
        {
            Bytes.MoveTo(0);
            stream = new ZLibStream(new SegmentStream(Bytes), CompressionMode.Decompress);
        }
        try
        {
            stream.ReadExactly(row);
        }
        catch (Exception broken) when (broken is InvalidDataException || IsOfZlib(broken))
        {
            throw Bytes.Damaged("the compressed samples are damaged (Deflate).", broken);
        }
        catch (EndOfStreamException early)
        {
            throw Bytes.Damaged("the compressed samples end too early (Deflate).", early);
        }
        form.Read(row, samples);
    }

    /// <summary>
    /// Some damage, such as a request for a preset dictionary, raises an exception type internal to the runtime.
    /// </summary>
    private static bool IsOfZlib(Exception broken) =>
        broken is IOException && broken.GetType().Namespace == "System.IO.Compression";
}
