using System.Buffers.Binary;

namespace SensorProfile.Fuzz;

/// <summary>
/// Spoils a TIFF file where it hurts: an entry of one of its directories gets another tag, type, number of values or
/// place, so that directories run in circles, strips overlap or end nowhere, tiles have a side of 1, and samples are coded
/// in another way than the file says.
/// </summary>
internal static class TiffEntryChange
{
    private const int EntryBytes = 12;
    private const int MostDirectories = 8;

    // tags that say where and how samples stand, and where directories do
    private static readonly ushort[] tags =
    [
        254,
        256,
        257,
        258,
        259,
        262,
        266,
        273,
        277,
        278,
        279,
        284,
        317,
        322,
        323,
        324,
        325,
        330,
        339,
        33421,
        33422,
        34665,
        50706,
        50710,
        50711,
        50712,
        50713,
        50714,
        50715,
        50716,
        50717,
        50719,
        50720,
        50829,
        50830,
        50740,
        37500,
        51008,
        51009,
    ];

    // values that mean something for one of these tags: compressions, photometric kinds, predictors, bits, sides, counts
    private static readonly uint[] values =
    [
        0,
        1,
        2,
        3,
        4,
        5,
        6,
        7,
        8,
        9,
        12,
        14,
        15,
        16,
        17,
        32,
        255,
        256,
        4095,
        32767,
        32768,
        32773,
        32803,
        32946,
        34892,
        34893,
        52546,
        65534,
        65535,
        65536,
        1 << 24,
        int.MaxValue,
        1u << 31,
        uint.MaxValue - 1,
        uint.MaxValue,
    ];

    /// <summary>Changes one entry; nothing where the file is no TIFF any more.</summary>
    public static void Make(List<byte> input, Random random)
    {
        byte[] bytes = [.. input];
        if (bytes.Length < 16 || !(bytes is [0x49, 0x49, 42, 0, ..] or [0x4D, 0x4D, 0, 42, ..]))
            return;
        bool big = bytes[0] == 'M';
        List<int> directories = Directories(bytes, big);
        if (directories.Count == 0)
            return;
        int directory = directories[random.Next(directories.Count)];
        int entries = Read16(bytes, directory, big);
        if (entries == 0 || random.Next(12) == 0)
        {
            // the link to the next directory: back to this one, to another, into the samples
            int link = directory + 2 + (entries * EntryBytes);
            if (link + 4 <= bytes.Length)
                Write32(bytes, link, Place(bytes, directories, random), big);
        }
        else
        {
            int at = directory + 2 + (random.Next(entries) * EntryBytes);
            if (at + EntryBytes > bytes.Length)
                return;
            switch (random.Next(6))
            {
                case 0:
                    Write16(bytes, at, tags[random.Next(tags.Length)], big);
                    break;
                case 1:
                    Write16(bytes, at + 2, (ushort)random.Next(20), big);
                    break;
                case 2:
                    Write32(bytes, at + 4, values[random.Next(values.Length)], big);
                    break;
                case 3:
                    Write32(bytes, at + 8, Place(bytes, directories, random), big);
                    break;
                case 4:
                    Write16(bytes, at + 8, (ushort)values[random.Next(values.Length)], big);
                    break;
                default:
                    Write32(bytes, at + 8, values[random.Next(values.Length)], big);
                    break;
            }
        }
        for (int i = 0; i < bytes.Length; i++)
            input[i] = bytes[i];
    }

    private static List<int> Directories(byte[] bytes, bool big)
    {
        var found = new List<int>();
        long next = Read32(bytes, 4, big);
        while (found.Count < MostDirectories && next >= 8 && next + 6 < bytes.Length && !found.Contains((int)next))
        {
            found.Add((int)next);
            long link = next + 2 + (Read16(bytes, (int)next, big) * EntryBytes);
            next = link + 4 <= bytes.Length ? Read32(bytes, (int)link, big) : 0;
        }
        return found;
    }

    private static uint Place(byte[] bytes, List<int> directories, Random random) =>
        random.Next(4) switch
        {
            0 => (uint)directories[random.Next(directories.Count)],
            1 => (uint)bytes.Length - (uint)random.Next(3),
            2 => (uint)random.Next(16),
            _ => (uint)random.Next(bytes.Length),
        };

    private static ushort Read16(byte[] bytes, int at, bool big) =>
        big
            ? BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at))
            : BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(at));

    private static uint Read32(byte[] bytes, int at, bool big) =>
        big
            ? BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at))
            : BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(at));

    private static void Write16(byte[] bytes, int at, ushort value, bool big)
    {
        if (big)
            BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(at), value);
        else
            BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(at), value);
    }

    private static void Write32(byte[] bytes, int at, uint value, bool big)
    {
        if (big)
            BinaryPrimitives.WriteUInt32BigEndian(bytes.AsSpan(at), value);
        else
            BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(at), value);
    }
}
