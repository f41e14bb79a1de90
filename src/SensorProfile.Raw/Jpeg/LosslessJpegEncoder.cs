using System.Numerics;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Jpeg;

/// <summary>
/// Encodes samples as lossless JPEG with Huffman codes (ITU-T T.81, process 14), with one table for all components,
/// built for these samples.
/// </summary>
internal static class LosslessJpegEncoder
{
    /// <summary>Encodes whole lines.</summary>
    /// <param name="samples">The samples, line after line, components interleaved.</param>
    /// <param name="lineSamples">Samples per line, over all components.</param>
    /// <param name="bits">Bits per sample.</param>
    /// <param name="form">Components, predictor and restarts.</param>
    /// <returns>The JPEG image from SOI to EOI.</returns>
    public static byte[] Encode(ReadOnlySpan<ushort> samples, int lineSamples, int bits, DngForm form)
    {
        short[] differences = Differences(samples, lineSamples, bits, form);
        var frequencies = new long[17];
        foreach (short difference in differences)
            frequencies[BitsOf(difference)]++;
        HuffmanCode code = HuffmanCode.For(frequencies);
        using var coded = new MemoryStream();
        WriteHeader(coded, lineSamples / form.JpegComponents, samples.Length / lineSamples, bits, form, code);
        int restart = form.JpegRestartLines > 0 ? form.JpegRestartLines * lineSamples : int.MaxValue;
        int number = 0;
        for (int from = 0; from < differences.Length; from += restart)
        {
            if (from > 0)
                coded.Write([0xFF, (byte)(0xD0 + (number++ & 7))]);
            WriteDifferences(coded, differences.AsSpan(from, Math.Min(restart, differences.Length - from)), code);
            if (restart == int.MaxValue)
                break;
        }
        coded.Write([0xFF, 0xD9]);
        return coded.ToArray();
    }

    /// <summary>Bit length of a difference: 0 for 0, n for 2ⁿ⁻¹ ≤ |d| &lt; 2ⁿ, 16 for −32768.</summary>
    private static int BitsOf(short difference) => 32 - BitOperations.LeadingZeroCount((uint)Math.Abs((int)difference));

    private static short[] Differences(ReadOnlySpan<ushort> samples, int lineSamples, int bits, DngForm form)
    {
        var differences = new short[samples.Length];
        for (int i = 0; i < samples.Length; i++)
        {
            (int line, int column) = (i / lineSamples, i % lineSamples);
            bool first = form.JpegRestartLines > 0 ? line % form.JpegRestartLines == 0 : line == 0;
            differences[i] = (short)(samples[i] - Prediction(samples, i, column, lineSamples, first, bits, form));
        }
        return differences;
    }

    private static int Prediction(
        ReadOnlySpan<ushort> samples,
        int at,
        int column,
        int lineSamples,
        bool first,
        int bits,
        DngForm form
    )
    {
        int components = form.JpegComponents;
        if (first)
            return column < components ? 1 << (bits - 1) : samples[at - components];
        int above = samples[at - lineSamples];
        if (column < components)
            return above;
        int left = samples[at - components];
        int aboveLeft = samples[at - lineSamples - components];
        return form.JpegPredictor switch
        {
            1 => LeftPredictor.Predict(left, above, aboveLeft),
            2 => AbovePredictor.Predict(left, above, aboveLeft),
            3 => AboveLeftPredictor.Predict(left, above, aboveLeft),
            4 => PlanePredictor.Predict(left, above, aboveLeft),
            5 => LeftSlopePredictor.Predict(left, above, aboveLeft),
            6 => AboveSlopePredictor.Predict(left, above, aboveLeft),
            _ => MeanPredictor.Predict(left, above, aboveLeft),
        };
    }

    private static void WriteHeader(Stream coded, int width, int lines, int bits, DngForm form, HuffmanCode code)
    {
        int components = form.JpegComponents;
        coded.Write([0xFF, 0xD8]);
        byte[] frame = [(byte)bits, .. Word(lines), .. Word(width), (byte)components];
        Write(
            coded,
            0xC3,
            [.. frame, .. Enumerable.Range(0, components).SelectMany(c => new byte[] { (byte)c, 0x11, 0 })]
        );
        Write(coded, 0xC4, [0, .. code.Counts, .. code.Values]);
        if (form.JpegRestartLines > 0)
            Write(coded, 0xDD, [.. Word(form.JpegRestartLines * width)]);
        Write(
            coded,
            0xDA,
            [
                (byte)components,
                .. Enumerable.Range(0, components).SelectMany(c => new byte[] { (byte)c, 0 }),
                (byte)form.JpegPredictor,
                0,
                0,
            ]
        );
    }

    private static void Write(Stream coded, byte marker, byte[] content) =>
        coded.Write([0xFF, marker, .. Word(content.Length + 2), .. content]);

    private static byte[] Word(int value) => [(byte)(value >> 8), (byte)value];

    private static void WriteDifferences(Stream coded, ReadOnlySpan<short> differences, HuffmanCode code)
    {
        ulong buffer = 0;
        int held = 0;
        foreach (short difference in differences)
        {
            int bits = BitsOf(difference);
            (int codeBits, int value) = (code.Lengths[bits], code.Codes[bits]);
            buffer = (buffer << codeBits) | (uint)value;
            held += codeBits;
            if (bits is > 0 and < 16)
            {
                int low = difference > 0 ? difference : difference + (1 << bits) - 1;
                buffer = (buffer << bits) | (uint)low;
                held += bits;
            }
            for (; held >= 8; held -= 8)
                WriteByte(coded, (byte)(buffer >> (held - 8)));
        }
        if (held > 0)
            WriteByte(coded, (byte)((buffer << (8 - held)) | (0xFFu >> held))); // padded with ones
    }

    private static void WriteByte(Stream coded, byte value)
    {
        coded.WriteByte(value);
        if (value == 0xFF)
            coded.WriteByte(0);
    }
}
