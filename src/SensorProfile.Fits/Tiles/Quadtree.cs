namespace SensorProfile.Fits.Tiles;

/// <summary>
/// The quadtrees of HCOMPRESS: each bit plane is a tree of 4-bit nodes, one bit per quarter, in a fixed Huffman code.
/// </summary>
internal static class Quadtree
{
    private const uint DirectCode = 0,
        HuffmanCode = 0xF;

    /// <summary>Reads all bit planes of one quadrant and adds them to its coefficients.</summary>
    /// <param name="reader">Source of the bits.</param>
    /// <param name="coefficients">Coefficients, starting with the first of the quadrant.</param>
    /// <param name="stride">Distance between rows, in coefficients.</param>
    /// <param name="rows">Rows of the quadrant.</param>
    /// <param name="columns">Columns of the quadrant.</param>
    /// <param name="planes">Number of bit planes.</param>
    /// <exception cref="InvalidDataException">The bits are not such trees.</exception>
    public static void Read(
        ref BitReader reader,
        Span<long> coefficients,
        int stride,
        int rows,
        int columns,
        int planes
    )
    {
        int nodeRows = (rows + 1) / 2,
            nodeColumns = (columns + 1) / 2;
        var nodes = new byte[(nodeRows + 1) * (nodeColumns + 1)];
        for (int bit = planes - 1; bit >= 0; bit--)
        {
            switch (reader.Read(4))
            {
                case DirectCode:
                    foreach (ref byte node in nodes.AsSpan(0, nodeRows * nodeColumns))
                        node = (byte)reader.Read(4);
                    break;
                case HuffmanCode:
                    ReadTree(ref reader, nodes, rows, columns);
                    break;
                default:
                    throw new InvalidDataException("a bit plane has an unknown code");
            }

            InsertBits(nodes, coefficients, stride, rows, columns, bit);
        }
    }

    private static void ReadTree(ref BitReader reader, byte[] nodes, int rows, int columns)
    {
        int levels = HcompressCodec.Levels(Math.Max(rows, columns));
        nodes[0] = ReadNode(ref reader);
        (int height, int width, int restRows, int restColumns) = (1, 1, rows, columns);
        for (int size = 1 << levels, level = 1; level < levels; level++)
        {
            size >>= 1;
            height = Grow(height, ref restRows, size);
            width = Grow(width, ref restColumns, size);
            Expand(nodes, height, width);
            for (int i = (height * width) - 1; i >= 0; i--)
            {
                if (nodes[i] != 0)
                    nodes[i] = ReadNode(ref reader);
            }
        }
    }

    /// <summary>Length of the next level: doubled, less one when the last half is empty.</summary>
    internal static int Grow(int length, ref int rest, int size)
    {
        if (rest <= size)
            return (2 * length) - 1;
        rest -= size;
        return 2 * length;
    }

    /// <summary>Expands every 4-bit node to the 2 × 2 nodes below it, in place, from the last to the first.</summary>
    private static void Expand(byte[] nodes, int rows, int columns)
    {
        int oldColumns = (columns + 1) / 2;
        for (int i = ((rows + 1) / 2) - 1; i >= 0; i--)
        {
            for (int j = oldColumns - 1; j >= 0; j--)
            {
                byte node = nodes[(i * oldColumns) + j];
                int at = (2 * i * columns) + (2 * j);
                bool right = (2 * j) + 1 < columns;
                if ((2 * i) + 1 < rows)
                {
                    if (right)
                        nodes[at + columns + 1] = (byte)(node & 1);
                    nodes[at + columns] = (byte)((node >> 1) & 1);
                }

                if (right)
                    nodes[at + 1] = (byte)((node >> 2) & 1);
                nodes[at] = (byte)((node >> 3) & 1);
            }
        }
    }

    private static void InsertBits(byte[] nodes, Span<long> coefficients, int stride, int rows, int columns, int bit)
    {
        int node = 0;
        for (int i = 0; i < rows; i += 2)
        {
            for (int j = 0; j < columns; j += 2)
            {
                long bits = nodes[node++];
                int at = (i * stride) + j;
                bool right = j + 1 < columns;
                coefficients[at] |= ((bits >> 3) & 1) << bit;
                if (right)
                    coefficients[at + 1] |= ((bits >> 2) & 1) << bit;
                if (i + 1 >= rows)
                    continue;
                coefficients[at + stride] |= ((bits >> 1) & 1) << bit;
                if (right)
                    coefficients[at + stride + 1] |= (bits & 1) << bit;
            }
        }
    }

    /// <summary>Reads one node in the fixed Huffman code of HCOMPRESS: 3 to 6 bits.</summary>
    private static byte ReadNode(ref BitReader reader)
    {
        uint code = reader.Read(3);
        if (code < 4)
            return (byte)(1 << (int)code);
        code = (code << 1) | reader.Read(1);
        if (code < 13)
            return code switch
            {
                8 => 3,
                9 => 5,
                10 => 10,
                11 => 12,
                _ => 15,
            };
        code = (code << 1) | reader.Read(1);
        if (code < 31)
            return code switch
            {
                26 => 6,
                27 => 7,
                28 => 9,
                29 => 11,
                _ => 13,
            };
        return reader.Read(1) == 0 ? (byte)0 : (byte)14;
    }
}
