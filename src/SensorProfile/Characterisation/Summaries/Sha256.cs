using System.Buffers.Binary;
using System.Numerics;

namespace SensorProfile.Characterisation.Summaries;

/// <summary>SHA-256 (FIPS 180-4): a name for a set of frames, no secret.</summary>
/// <remarks>The runtime's own asks for the system's OpenSSL, and ends the program where that is missing.</remarks>
internal static class Sha256
{
    private const int Block = 64;

    // Fractional parts of the cube roots of the first 64 primes and of the square roots of the first eight.
    private static readonly uint[] constants = [.. Primes().Take(64).Select(p => Fraction(p, 3))],
        start = [.. Primes().Take(8).Select(p => Fraction(p, 2))];

    /// <summary>The digest as 64 hexadecimal digits.</summary>
    /// <param name="message">The bytes.</param>
    public static string Hex(ReadOnlySpan<byte> message)
    {
        // a one bit, zeros, and the length in bits
        byte[] padded = new byte[(message.Length + 8 + Block) / Block * Block];
        message.CopyTo(padded);
        padded[message.Length] = 0x80;
        BinaryPrimitives.WriteInt64BigEndian(padded.AsSpan(padded.Length - 8), 8L * message.Length);

        uint[] state = [.. start];
        for (int i = 0; i < padded.Length; i += Block)
            Add(padded.AsSpan(i, Block), state);
        return string.Concat(
            state.Select(word => word.ToString("x8", System.Globalization.CultureInfo.InvariantCulture))
        );
    }

    private static void Add(ReadOnlySpan<byte> block, uint[] state)
    {
        Span<uint> w = stackalloc uint[64];
        for (int t = 0; t < 16; t++)
            w[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(4 * t)..]);
        for (int t = 16; t < 64; t++)
        {
            uint s0 = Turn(w[t - 15], 7) ^ Turn(w[t - 15], 18) ^ (w[t - 15] >> 3),
                s1 = Turn(w[t - 2], 17) ^ Turn(w[t - 2], 19) ^ (w[t - 2] >> 10);
            w[t] = w[t - 16] + s0 + w[t - 7] + s1;
        }
        (uint a, uint b, uint c, uint d) = (state[0], state[1], state[2], state[3]);
        (uint e, uint f, uint g, uint h) = (state[4], state[5], state[6], state[7]);
        for (int t = 0; t < 64; t++)
        {
            uint choice = (e & f) ^ (~e & g),
                majority = (a & b) ^ (a & c) ^ (b & c),
                first = h + (Turn(e, 6) ^ Turn(e, 11) ^ Turn(e, 25)) + choice + constants[t] + w[t],
                second = (Turn(a, 2) ^ Turn(a, 13) ^ Turn(a, 22)) + majority;
            (h, g, f, e, d, c, b, a) = (g, f, e, d + first, c, b, a, first + second);
        }
        uint[] added = [a, b, c, d, e, f, g, h];
        for (int i = 0; i < added.Length; i++)
            state[i] += added[i];
    }

    private static uint Turn(uint word, int bits) => BitOperations.RotateRight(word, bits);

    private static IEnumerable<int> Primes() =>
        Enumerable.Range(2, 400).Where(n => Enumerable.Range(2, n - 2).All(divisor => n % divisor != 0));

    /// <summary>The first 32 bits behind the point of a root: ⌊root of n·2^(32·degree)⌋ modulo 2³², exact.</summary>
    private static uint Fraction(int n, int degree)
    {
        BigInteger target = (BigInteger)n << (32 * degree),
            low = 0,
            high = BigInteger.One << 40;
        while (high - low > 1)
        {
            BigInteger middle = (low + high) >> 1;
            if (BigInteger.Pow(middle, degree) <= target)
                low = middle;
            else
                high = middle;
        }
        return (uint)(low & uint.MaxValue);
    }
}
