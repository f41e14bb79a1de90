using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using BitMiracle.LibTiff.Classic;
using SensorProfile.Raw.Writing;
using Xunit.Abstractions;

namespace SensorProfile.Raw.Tests;

/// <summary>
/// Damaged files give a RawFormatException or can be read; nothing else, and never much memory. The seeds are
/// fixed.
/// </summary>
/// <remarks>SENSORPROFILE_MUTATIONS sets how many files are tried: a million takes a few minutes.</remarks>
public sealed class MutationTests(ITestOutputHelper output)
{
    private const int OrdinaryNumber = 6_000;
    private const long MostBytes = 200L << 20; // of one file, all allocations together; 400 MB are allowed
    private const long MostSamplesRead = 2_000_000;

    [Fact]
    public void AMutatedFileIsReadOrRefused()
    {
        int number = int.TryParse(
            Environment.GetEnvironmentVariable("SENSORPROFILE_MUTATIONS"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int asked
        )
            ? asked
            : OrdinaryNumber;
        byte[][] originals = [.. Originals()];
        var random = new Random(20_260);
        int refused = 0;
        (TimeSpan slowest, long largest) = (TimeSpan.Zero, 0);
        for (int i = 0; i < number; i++)
        {
            byte[] mutated = Mutated(originals[i % originals.Length], random);
            long before = GC.GetAllocatedBytesForCurrentThread();
            long start = Stopwatch.GetTimestamp();
            refused += IsRefused(mutated, i) ? 1 : 0;
            TimeSpan time = Stopwatch.GetElapsedTime(start);
            long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            (slowest, largest) = (time > slowest ? time : slowest, Math.Max(bytes, largest));
            Assert.True(bytes < MostBytes, $"mutation {i}: {bytes} bytes, {time}");
        }
        output.WriteLine(
            $"{number} files, {refused} refused, slowest {slowest.TotalMilliseconds:F0} ms, largest "
                + $"{largest / 1048576.0:F1} MiB"
        );
        Assert.InRange(refused, number / 10, number - (number / 50)); // some of both, or the mutations try nothing
    }

    [Fact]
    public void ATruncatedFileIsReadOrRefused()
    {
        foreach (byte[] original in Originals())
            for (int i = 0; i <= 50; i++)
                IsRefused(original[..(int)((long)original.Length * i / 50)], i);
    }

    private static IEnumerable<byte[]> Originals()
    {
        int seed = 1;
        foreach (DngForm form in TestFrames.Forms.Values)
        {
            DngFrame frame = TestFrames.Noisy(64, 60, 12, seed++) with
            {
                ActiveArea = new RawArea(2, 4, 58, 62),
                MaskedAreas = [new RawArea(0, 0, 2, 64)],
                BlackLevel = new RawBlackLevel
                {
                    PatternRows = 2,
                    PatternColumns = 2,
                    Pattern = [64, 65, 66, 64.5],
                    ColumnOffsets = new double[58],
                    RowOffsets = new double[56],
                },
                LinearisationTable =
                    seed % 3 == 0 ? [.. Enumerable.Range(0, 4096).Select(code => (ushort)(code * 2))] : null,
                Facts = new RawFacts
                {
                    Camera = "Fell-24C",
                    ExposureSeconds = 1.5,
                    Iso = 100,
                    Time = new RawTime(new DateTime(2026, 1, 2, 3, 4, 5), TimeSpan.Zero),
                    Temperature = new RawTemperature(12, 0.5, RawTemperaturePlace.Ambient, ""),
                },
            };
            yield return TestFrames.Bytes(frame, form);
        }
        foreach (string form in new[] { "packed, big-endian, strips", "lossless JPEG, two components, tiles" })
            yield return BigTiff.From(TestFrames.Bytes(TestFrames.Noisy(64, 60, 12), TestFrames.Forms[form]));
        yield return Facts.MakerNoteFiles.Bytes(temperature: 31);
        yield return PlainTiff.Bytes(TestFrames.Noisy(64, 60, 16), Compression.LZW);
        yield return PlainTiff.Bytes(TestFrames.Noisy(64, 60, 16), Compression.ADOBE_DEFLATE);
        yield return PlainTiff.Bytes(TestFrames.Noisy(64, 60, 16), Compression.NONE);
    }

    private static byte[] Mutated(byte[] original, Random random)
    {
        byte[] bytes = random.Next(20) == 0 ? original[..random.Next(original.Length)] : [.. original];
        for (int changes = 1 + random.Next(5); changes > 0 && bytes.Length > 8; changes--)
            Change(bytes, random);
        return bytes;
    }

    /// <summary>
    /// Half of the changes fall on the directories, which stand at the end, and on the first bytes of the samples,
    /// where headers are.
    /// </summary>
    private static void Change(byte[] bytes, Random random)
    {
        int at = random.Next(4) switch
        {
            0 => random.Next(Math.Min(64, bytes.Length)),
            1 => bytes.Length - 1 - random.Next(Math.Min(1500, bytes.Length)),
            _ => random.Next(bytes.Length),
        };
        switch (random.Next(5))
        {
            case 0:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes[at] = (byte)(random.Next(2) * 255);
                break;
            case 3 when at + 4 <= bytes.Length:
                BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(at), Awkward(bytes.Length, random));
                break;
            case 4 when at + 2 <= bytes.Length:
                BinaryPrimitives.WriteUInt16BigEndian(bytes.AsSpan(at), (ushort)Awkward(bytes.Length, random));
                break;
            default:
                bytes.AsSpan(random.Next(bytes.Length), 1).CopyTo(bytes.AsSpan(at));
                break;
        }
    }

    private static uint Awkward(int length, Random random) =>
        random.Next(6) switch
        {
            0 => 0,
            1 => uint.MaxValue,
            2 => int.MaxValue,
            3 => (uint)length,
            4 => 65_535,
            _ => (uint)random.Next(length),
        };

    private static bool IsRefused(byte[] bytes, int number)
    {
        try
        {
            using RawFile file = RawFile.Open(new MemoryBytes(bytes));
            Read(file);
            return false;
        }
        catch (RawFormatException refusal)
        {
            Assert.StartsWith("test.dng", refusal.Message, StringComparison.Ordinal);
            return true;
        }
        catch (Exception other) when (other is not Xunit.Sdk.XunitException)
        {
            throw new InvalidOperationException($"mutation {number}", other);
        }
    }

    private static void Read(RawFile file)
    {
        RawMosaic mosaic = file.Mosaic;
        for (
            int row = 0, left = (int)(MostSamplesRead / mosaic.SensorWidth);
            row < mosaic.SensorHeight && left > 0;
            row += 16, left -= 16
        )
        {
            int rows = Math.Min(16, mosaic.SensorHeight - row);
            file.ReadSensorRows(row, new ushort[rows * mosaic.SensorWidth]);
        }
        foreach (
            RawArea area in mosaic.MaskedAreas.Where(area => (long)area.Height * mosaic.SensorWidth < MostSamplesRead)
        )
            file.ReadSensorRows(area.Top, new ushort[area.Height * mosaic.SensorWidth]);
        var last = new ushort[mosaic.Width];
        file.Park();
        file.ReadRows(mosaic.Height > 500 ? 0 : mosaic.Height - 1, last);
        mosaic.Linearisation?.Apply(last);
        _ = mosaic.BlackLevel?.At(mosaic.Height - 1, mosaic.Width - 1);
    }
}
