using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace SensorProfile.Raw.Tests.Outside;

/// <summary>A picture in PGM with 16 bits, as dcraw writes it.</summary>
internal sealed record PortableGreyMap(int Width, int Height, ushort[] Samples)
{
    public static PortableGreyMap Read(string path)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int at = 0;
        string[] header = [Word(bytes, ref at), Word(bytes, ref at), Word(bytes, ref at), Word(bytes, ref at)];
        Assert.Equal(("P5", "65535"), (header[0], header[3]));
        (int width, int height) = (
            int.Parse(header[1], CultureInfo.InvariantCulture),
            int.Parse(header[2], CultureInfo.InvariantCulture)
        );
        var samples = new ushort[width * height];
        for (int i = 0; i < samples.Length; i++, at += 2)
            samples[i] = BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at));
        return new PortableGreyMap(width, height, samples);
    }

    private static string Word(byte[] bytes, ref int at)
    {
        int start = at;
        while (!char.IsWhiteSpace((char)bytes[at]))
            at++;
        return Encoding.ASCII.GetString(bytes, start, at++ - start);
    }
}
