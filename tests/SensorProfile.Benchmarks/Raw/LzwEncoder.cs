namespace SensorProfile.Benchmarks.Raw;

/// <summary>LZW of TIFF 6.0, section 13: codes of 9 to 12 bits, the highest bit first. To make files to measure with.</summary>
internal static class LzwEncoder
{
    private const int Clear = 256,
        End = 257,
        Last = 4094,
        FewestBits = 9;

    public static byte[] Encode(ReadOnlySpan<byte> bytes)
    {
        var codes = new Dictionary<int, int>();
        using var output = new MemoryStream();
        (ulong held, int bits, int width, int next) = (0, 0, FewestBits, End + 1);
        Put(Clear);
        int prefix = bytes[0];
        foreach (byte here in bytes[1..])
        {
            if (codes.TryGetValue((prefix << 8) | here, out int longer))
            {
                prefix = longer;
                continue;
            }
            Put(prefix);
            codes[(prefix << 8) | here] = next;
            prefix = here;
            if (next == Last)
            {
                Put(Clear);
                codes.Clear();
                (width, next) = (FewestBits, End + 1);
                continue;
            }
            if (next == (1 << width) - 1)
                width++;
            next++;
        }
        Put(prefix);
        if (next == (1 << width) - 1)
            width++; // the decoder adds an entry for this code, too
        Put(End);
        if (bits > 0)
            output.WriteByte((byte)(held << (8 - bits)));
        return output.ToArray();

        void Put(int code)
        {
            held = (held << width) | (uint)code;
            for (bits += width; bits >= 8; bits -= 8)
                output.WriteByte((byte)(held >> (bits - 8)));
            held &= (1UL << bits) - 1;
        }
    }
}
