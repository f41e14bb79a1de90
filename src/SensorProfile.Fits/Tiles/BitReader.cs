using System.Numerics;

namespace SensorProfile.Fits.Tiles;

/// <summary>Reads bits, the most significant of each byte first.</summary>
internal ref struct BitReader(ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> bytes = bytes;
    private int next;
    private ulong buffer; // the lowest "held" bits are still to be read
    private int held;

    /// <summary>The next bits as a number.</summary>
    /// <param name="count">0 to 32.</param>
    /// <exception cref="InvalidDataException">The bytes are used up.</exception>
    public uint Read(int count)
    {
        while (held < count)
            Fetch();
        held -= count;
        uint value = (uint)((buffer >> held) & ((1UL << count) - 1));
        return value;
    }

    /// <summary>Number of zeros up to the next one; the one is taken too.</summary>
    /// <exception cref="InvalidDataException">The bytes are used up.</exception>
    public int ReadZeros()
    {
        int zeros = 0;
        while (true)
        {
            ulong rest = buffer & ((1UL << held) - 1);
            if (rest != 0)
            {
                int highest = BitOperations.Log2(rest);
                zeros += held - 1 - highest;
                held = highest;
                return zeros;
            }

            zeros += held;
            held = 0;
            Fetch();
        }
    }

    /// <summary>Leaves out what is left of the current byte.</summary>
    public void SkipToByte() => held -= held % 8;

    private void Fetch()
    {
        if (next == bytes.Length)
            throw new InvalidDataException("the compressed bytes end too early");
        buffer = (buffer << 8) | bytes[next++];
        held += 8;
    }
}
