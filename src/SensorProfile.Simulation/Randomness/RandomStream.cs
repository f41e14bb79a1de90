using System.Numerics;
using System.Runtime.CompilerServices;

namespace SensorProfile.Simulation.Randomness;

/// <summary>
/// A stream of random numbers that depends only on its key, so that rows and frames may be computed in any order by any
/// number of threads.
/// </summary>
/// <remarks>
/// xoshiro256++ (Blackman and Vigna 2021, ACM Trans. Math. Softw. 47, 36), seeded from a SplitMix64 sequence (Steele,
/// Lea, Flood 2014) that starts at a hash of the key. Two of n streams share their start with a probability of about
/// n²/2⁶⁵: 10⁻⁸ for half a million rows.
/// </remarks>
internal struct RandomStream
{
    private const ulong GoldenGamma = 0x9E3779B97F4A7C15;
    private const double TwoToMinus53 = 1.0 / (1UL << 53);

    private ulong _s0;
    private ulong _s1;
    private ulong _s2;
    private ulong _s3;

    private RandomStream(ulong start)
    {
        _s0 = Mix(start += GoldenGamma);
        _s1 = Mix(start += GoldenGamma);
        _s2 = Mix(start += GoldenGamma);
        _s3 = Mix(start + GoldenGamma);
    }

    /// <summary>
    /// The stream for one purpose under one seed, with up to two indices (frame, row; pixel …).
    /// </summary>
    public static RandomStream For(ulong seed, Purpose purpose, long first = 0, long second = 0)
    {
        ulong key = Mix(seed + GoldenGamma);
        key = Mix(key ^ ((ulong)purpose * GoldenGamma));
        key = Mix(key + ((ulong)first * GoldenGamma));
        return new RandomStream(Mix(key ^ ((ulong)second * 0xD1B54A32D192ED03)));
    }

    /// <summary>64 random bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong Next()
    {
        ulong result = BitOperations.RotateLeft(_s0 + _s3, 23) + _s0;
        ulong shifted = _s1 << 17;
        _s2 ^= _s0;
        _s3 ^= _s1;
        _s1 ^= _s2;
        _s0 ^= _s3;
        _s2 ^= shifted;
        _s3 = BitOperations.RotateLeft(_s3, 45);
        return result;
    }

    /// <summary>Uniform in the open interval 0…1, 53 bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double NextUniform() => ((Next() >> 11) + 0.5) * TwoToMinus53;

    /// <summary>Uniform among 0 … <paramref name="count"/> − 1; the bias is below count/2⁶⁴.</summary>
    public int NextIndex(int count) => (int)Math.BigMul(Next(), (ulong)count, out _);

    /// <summary>Normal with mean 0 and standard deviation 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double NextNormal() => NormalZiggurat.Draw(ref this);

    /// <summary>Exponential with mean 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double NextExponential() => ExponentialZiggurat.Draw(ref this);

    private static ulong Mix(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }
}
