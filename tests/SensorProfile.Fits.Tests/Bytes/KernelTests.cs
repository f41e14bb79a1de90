using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.InteropServices;
using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits.Tests.Bytes;

/// <summary>Vector and scalar forms agree at every length, and the vector form ran when there is one.</summary>
public sealed class KernelTests
{
    [Fact]
    public void TheExpectedVectorWidthIsUsed()
    {
        string lanes = Vector.IsHardwareAccelerated ? $"{Vector<ushort>.Count}" : "scalar";
        Assert.Equal(Environment.GetEnvironmentVariable("EXPECTED_LANES") ?? lanes, lanes);
    }

    [Theory]
    [InlineData((ushort)0)]
    [InlineData((ushort)0x8000)]
    public void ReversingAndFlippingAgreesAtEveryLength(ushort mask)
    {
        ushort[] numbers = Noise<ushort>(300);
        for (int length = 0; length <= 257; length++)
        {
            ushort[] expected = new ushort[length],
                actual = new ushort[length];
            ByteOrder.ReverseAndFlipScalar(numbers.AsSpan(3, length), expected, mask);
            ByteOrder.ReverseAndFlip(numbers.AsSpan(3, length), actual, mask);
            Assert.Equal(expected, actual);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(8)]
    public void BigEndianAndBackIsTheSame(int elementBytes)
    {
        byte[] numbers = Noise<byte>(8 * 41);
        foreach (bool flip in new[] { false, true })
        {
            byte[] turned = new byte[numbers.Length];
            ByteOrder.ToBigEndian(numbers, turned, elementBytes, flip);
            Assert.Equal((byte)(numbers[elementBytes - 1] ^ (flip ? 0x80 : 0)), turned[0]);
            ByteOrder.FromBigEndian(turned, elementBytes, flip);
            Assert.Equal(numbers, turned);
        }
    }

    [Fact]
    public void BigEndianIsWhatTheRuntimeSaysItIs()
    {
        byte[] bytes = Noise<byte>(4 * 50);
        byte[] turned = [.. bytes];
        ByteOrder.FromBigEndian(turned, 4, true);
        for (int i = 0; i < 50; i++)
            Assert.Equal(
                BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(4 * i)) + 2147483648L,
                MemoryMarshal.Cast<byte, uint>(turned)[i]
            );
    }

    [Fact]
    public void ConversionsAgreeAtEveryLength()
    {
        Agree<ushort, int>();
        Agree<ushort, float>();
        Agree<ushort, double>();
        Agree<short, int>();
        Agree<short, float>();
        Agree<short, double>();
        Agree<byte, ushort>();
        Agree<float, double>();
        Agree<int, float>();
        Agree<ulong, double>();
    }

    [Theory]
    [InlineData(9223372036854775808.0, false)]
    [InlineData(9223372036854774784.0, true)]
    [InlineData(-9223372036854775808.0, true)]
    [InlineData(0.5, false)]
    [InlineData(double.NaN, false)]
    [InlineData(-0.0, true)]
    public void ADoubleFitsALongOnlyWhenItIsOne(double value, bool fits) =>
        Assert.Equal(fits ? -1 : 0, PixelConversion.ConvertScalar<double, long>([value], new long[1]));

    [Fact]
    public void IntegersFitOnlyInRange()
    {
        Assert.Equal(1, PixelConversion.Convert<long, ulong>([1, -1], new ulong[2]));
        Assert.Equal(2, PixelConversion.Convert<ulong, long>([1, long.MaxValue, 1UL << 63], new long[3]));
        Assert.Equal(2, PixelConversion.Convert<int, ushort>([0, 65535, 65536], new ushort[3]));
        Assert.Equal(0, PixelConversion.Convert<sbyte, ushort>([-1], new ushort[1]));
        Assert.Equal(1, PixelConversion.Convert<float, int>([2147483520f, 2147483648f], new int[2]));
    }

    private static void Agree<TFrom, TTo>()
        where TFrom : unmanaged, INumber<TFrom>
        where TTo : unmanaged, INumber<TTo>
    {
        TFrom[] numbers = Noise<TFrom>(300);
        for (int length = 0; length <= 257; length++)
        {
            TTo[] expected = new TTo[length],
                actual = new TTo[length];
            Assert.Equal(-1, PixelConversion.ConvertScalar<TFrom, TTo>(numbers.AsSpan(3, length), expected));
            Assert.Equal(-1, PixelConversion.Convert<TFrom, TTo>(numbers.AsSpan(3, length), actual));
            Assert.Equal(MemoryMarshal.AsBytes<TTo>(expected).ToArray(), MemoryMarshal.AsBytes<TTo>(actual).ToArray());
        }
    }

    private static T[] Noise<T>(int count)
        where T : unmanaged
    {
        var numbers = new T[count];
        new Random(11).NextBytes(MemoryMarshal.AsBytes(numbers.AsSpan()));
        return numbers;
    }
}
