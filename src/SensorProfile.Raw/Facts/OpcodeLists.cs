using System.Buffers.Binary;
using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Facts;

/// <summary>The corrections that a DNG asks of its converter before colours are computed (opcode lists 1 and 2).</summary>
/// <remarks>
/// They change what a converter makes of the samples, not the samples in the file. DNG 1.7, chapter 7: a list is big-endian
/// whatever the file is; a number of opcodes, then for each its number, version, flags, bytes of parameters, parameters.
/// </remarks>
internal static class OpcodeLists
{
    private const int MaxBytes = 8 << 20; // a gain map of many nodes
    private const int MaxOpcodes = 64;
    private const int HeaderBytes = 16;

    /// <summary>Their names in the order of the lists, each once; empty where there are none.</summary>
    public static IReadOnlyList<string> Read(TiffDirectory? mosaic, List<RawWarning> warnings)
    {
        List<string> names = [];
        foreach (Tag tag in new[] { Tag.OpcodeList1, Tag.OpcodeList2 })
        {
            byte[] list = OptionalTags.Read(mosaic, tag, warnings, d => d.Bytes(tag, MaxBytes), []);
            names.AddRange(Names(list));
        }
        return names.Count == 0 ? [] : [.. names.Distinct()];
    }

    /// <summary>The names of one list, as far as it can be read.</summary>
    private static IEnumerable<string> Names(byte[] list)
    {
        if (list.Length < 4)
            yield break;
        uint count = Math.Min(BinaryPrimitives.ReadUInt32BigEndian(list), MaxOpcodes);
        long at = 4;
        for (uint i = 0; i < count && at + HeaderBytes <= list.Length; i++)
        {
            yield return Name(BinaryPrimitives.ReadUInt32BigEndian(list.AsSpan((int)at)));
            at += HeaderBytes + (long)BinaryPrimitives.ReadUInt32BigEndian(list.AsSpan((int)at + 12));
        }
    }

    private static string Name(uint opcode) =>
        opcode switch
        {
            1 or 2 or 14 => "distortion of the lens",
            3 => "vignetting of the lens",
            4 => "bad pixels told by a code of their own",
            5 => "a list of bad pixels",
            6 => "trimmed borders",
            7 or 8 => "a curve of levels",
            9 => "a map of gains",
            10 or 12 => "levels row by row",
            11 or 13 => "levels column by column",
            _ => Invariant($"opcode {opcode}"),
        };
}
