using System.Buffers.Binary;
using System.Text;

namespace SensorProfile.Tests.Characterisation;

/// <summary>Changes the pixels of simulated FITS frames (16 bits, BZERO 32768) where they lie.</summary>
internal static class RawPixels
{
    private const int Card = 80;
    private const int Block = 2880;

    /// <summary>What becomes of a sample: value, column, row → value.</summary>
    public delegate int Change(int value, int column, int row);

    /// <summary>
    /// Rewrites the samples of a frame; its checksums, which would give the change away, lose their names.
    /// </summary>
    public static void Rewrite(string path, int width, int height, Change change)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int data = Headless(bytes);
        var before = new int[width * height];
        for (int i = 0; i < before.Length; i++)
            before[i] = BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(data + 2 * i)) + 32768;
        for (int i = 0; i < before.Length; i++)
            BinaryPrimitives.WriteInt16BigEndian(
                bytes.AsSpan(data + 2 * i),
                (short)(Math.Clamp(change(before[i], i % width, i / width), 0, 65535) - 32768)
            );
        File.WriteAllBytes(path, bytes);
    }

    /// <summary>Writes a frame again as 32-bit floats, some of them without a value.</summary>
    public static void RewriteAsFloats(string path, int width, int height, Func<int, int, bool> isBlank)
    {
        byte[] bytes = File.ReadAllBytes(path);
        int data = Headless(bytes),
            pixels = width * height;
        SetCard(bytes, "BITPIX  ", "-32");
        SetCard(bytes, "BZERO   ", "0");
        byte[] written = new byte[data + (4 * pixels + Block - 1) / Block * Block];
        bytes.AsSpan(0, data).CopyTo(written);
        for (int i = 0; i < pixels; i++)
        {
            int value = BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(data + 2 * i)) + 32768;
            BinaryPrimitives.WriteSingleBigEndian(
                written.AsSpan(data + 4 * i),
                isBlank(i % width, i / width) ? float.NaN : value
            );
        }
        File.WriteAllBytes(path, written);
    }

    private static void SetCard(byte[] bytes, string keyword, string value)
    {
        for (int at = 0; ; at += Card)
            if (Encoding.ASCII.GetString(bytes, at, 8) == keyword)
            {
                Encoding.ASCII.GetBytes($"{keyword}= {value, 20}".PadRight(Card)).CopyTo(bytes, at);
                return;
            }
    }

    /// <summary>Every frame of a folder whose name starts so.</summary>
    public static void RewriteAll(string folder, string prefix, int width, int height, Change change)
    {
        foreach (string path in Directory.GetFiles(folder, prefix + "*.fits").Order(StringComparer.Ordinal))
            Rewrite(path, width, height, change);
    }

    private static int Headless(byte[] bytes)
    {
        for (int at = 0; ; at += Card)
        {
            string keyword = Encoding.ASCII.GetString(bytes, at, 8);
            if (keyword is "DATASUM " or "CHECKSUM")
                bytes[at] = (byte)'X';
            if (keyword == "END     ")
                return (at / Block + 1) * Block;
        }
    }
}
