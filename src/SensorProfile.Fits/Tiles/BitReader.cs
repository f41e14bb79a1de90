using System.Numerics;

namespace SensorProfile.Fits.Tiles;

/// <summary>Reads bits, the most significant of each byte first.</summary>
internal ref struct BitReader(ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> bytes = bytes;
    private int next;
    private ulong buffer; // its lowest "held" bits are still unread
    private int held;

    /// <summary>The next bits as a number.</summary>
    /// <param name="count">0 to 32.</param>
    /// <exception cref="InvalidDataException">No bytes are left.</exception>
    public uint Read(int count)
    {
        while (held < count)
            Fetch();
        held -= count;
        uint value = (uint)((buffer >> held) & ((1UL << count) - 1));
        return value;
    }

    /// <summary>Number of zeros before the next one bit; that bit is consumed too.</summary>
    /// <exception cref="InvalidDataException">No bytes are left.</exception>
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

    /// <summary>Skips the rest of the current byte.</summary>
    public void SkipToByte() => held -= held % 8;

    private void Fetch()
    {
        if (next == bytes.Length)
            throw new InvalidDataException("the compressed bytes end too early");
        buffer = (buffer << 8) | bytes[next++];
        held += 8;
    }
}
