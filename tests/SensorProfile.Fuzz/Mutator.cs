using System.Buffers.Binary;
using System.Text;
using SensorProfile.Fuzz.Targets;

namespace SensorProfile.Fuzz;

/// <summary>Spoils good inputs: single bits and bytes, numbers at awkward values, words, pieces left out, repeated or
/// taken from another input.</summary>
internal sealed class Mutator(Target target, Random random)
{
    private const int CardBytes = 80;

    private static readonly byte[][] awkwardNumbers =
    [
        .. new[]
        {
            "0",
            "-0",
            "-1",
            "1",
            "2147483647",
            "-2147483648",
            "4294967296",
            "9223372036854775807",
            "1e308",
            "-1e308",
            "1e400",
            "1e-320",
            "1E+999999",
            "NaN",
            "-Infinity",
            "0.1",
            "1,5",
            "1e",
            "--1",
            "99999999999999999999999",
        }.Select(Encoding.ASCII.GetBytes),
    ];

    /// <summary>The next input.</summary>
    public byte[] Next()
    {
        var input = new List<byte>(target.Seeds[random.Next(target.Seeds.Count)]);
        bool numbersOnly = target.Form == InputForm.Text && random.Next(2) == 0; // stays text of its format
        for (int changes = 1 + random.Next(random.Next(10) == 0 ? 30 : 4); changes > 0; changes--)
        {
            if (numbersOnly)
                WrittenNumber(input);
            else if (target.Form == InputForm.Tiff && random.Next(2) == 0)
                TiffEntryChange.Make(input, random);
            else
                Change(input);
        }
        return [.. input];
    }

    private void Change(List<byte> input)
    {
        if (input.Count < 2)
            return;
        switch (random.Next(14))
        {
            case 0 or 1:
                input[Place(input)] ^= (byte)(1 << random.Next(8));
                break;
            case 2:
                input[Place(input)] = (byte)random.Next(256);
                break;
            case 3:
                input[Place(input)] = (byte)(random.Next(2) * 255);
                break;
            case 4 or 5:
                Number(input);
                break;
            case 6 when target.Tokens.Count > 0:
                Overwrite(input, Place(input), target.Tokens[random.Next(target.Tokens.Count)]);
                break;
            case 7 when target.Tokens.Count > 0:
                input.InsertRange(Place(input), target.Tokens[random.Next(target.Tokens.Count)]);
                break;
            case 8:
                LeaveOut(input);
                break;
            case 9:
                Repeat(input);
                break;
            case 10 when random.Next(4) == 0:
                Splice(input);
                break;
            case 11 when random.Next(4) == 0:
                Truncate(input);
                break;
            default:
                WrittenNumber(input);
                break;
        }
    }

    /// <summary>Half of the changes fall on the beginning and the end, where headers and directories are.</summary>
    private int Place(List<byte> input) =>
        random.Next(4) switch
        {
            0 => random.Next(Math.Min(target.Form == InputForm.Cards ? 2880 * 2 : 64, input.Count)),
            1 => input.Count - 1 - random.Next(Math.Min(1500, input.Count)),
            _ => random.Next(input.Count),
        };

    private void Number(List<byte> input)
    {
        Span<byte> bytes = stackalloc byte[8];
        long value = random.Next(8) switch
        {
            0 => 0,
            1 => -1,
            2 => int.MaxValue,
            3 => int.MinValue,
            4 => input.Count,
            5 => long.MinValue,
            6 => 65_535,
            _ => random.Next(input.Count),
        };
        int size = 1 << random.Next(1, 4);
        if (random.Next(2) == 0)
        {
            BinaryPrimitives.WriteInt64BigEndian(bytes, value);
            Overwrite(input, Place(input), bytes[^size..]);
        }
        else
        {
            BinaryPrimitives.WriteInt64LittleEndian(bytes, value);
            Overwrite(input, Place(input), bytes[..size]);
        }
    }

    /// <summary>Another value for a card of a header, or another number where one is written out.</summary>
    private void WrittenNumber(List<byte> input)
    {
        byte[] number = awkwardNumbers[random.Next(awkwardNumbers.Length)];
        if (target.Form == InputForm.Cards && input.Count > CardBytes)
        {
            int card = random.Next(Math.Min(input.Count / CardBytes, 90)) * CardBytes;
            byte[] field = Enumerable.Repeat((byte)' ', 20).ToArray();
            number.AsSpan(0, Math.Min(20, number.Length)).CopyTo(field);
            Overwrite(input, card + 10, field);
            return;
        }
        int at = Place(input);
        int start = input.FindIndex(at, b => b is >= (byte)'0' and <= (byte)'9');
        if (start < 0)
            return;
        int end = start;
        while (
            end < input.Count && input[end] is (>= (byte)'0' and <= (byte)'9') or (byte)'.' or (byte)'e' or (byte)'-'
        )
            end++;
        if (target.Form == InputForm.Text)
        {
            input.RemoveRange(start, end - start);
            input.InsertRange(start, number);
        }
        else
            input[start] = (byte)('0' + random.Next(10));
    }

    private void LeaveOut(List<byte> input)
    {
        int from = Place(input);
        input.RemoveRange(from, Math.Min(input.Count - from, 1 + random.Next(random.Next(8) == 0 ? 2000 : 12)));
    }

    private void Repeat(List<byte> input)
    {
        int from = Place(input),
            length = Math.Min(input.Count - from, 1 + random.Next(random.Next(8) == 0 ? 2000 : 40));
        input.InsertRange(Place(input), input.GetRange(from, length));
    }

    private void Splice(List<byte> input)
    {
        byte[] other = target.Seeds[random.Next(target.Seeds.Count)];
        int at = random.Next(input.Count);
        input.RemoveRange(at, input.Count - at);
        input.AddRange(other.AsSpan(Math.Min(at, other.Length)));
    }

    private void Truncate(List<byte> input)
    {
        int at = random.Next(input.Count);
        input.RemoveRange(at, input.Count - at);
    }

    private static void Overwrite(List<byte> input, int at, ReadOnlySpan<byte> bytes)
    {
        for (int i = 0; i < bytes.Length && at + i < input.Count; i++)
            input[at + i] = bytes[i];
    }
}
