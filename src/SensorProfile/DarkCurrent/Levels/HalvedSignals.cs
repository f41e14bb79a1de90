using SensorProfile.Pixels;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.DarkCurrent.Levels;

/// <summary>
/// Dark signal of one channel in blocks spread evenly over the frame, from two halves of the frames: what the halves
/// share belongs to the pixels, the rest is noise.
/// </summary>
/// <param name="FirstFrames">Frames of the first half.</param>
/// <param name="SecondFrames">Frames of the second half.</param>
/// <param name="First">[block][pixel], e- above the pedestal: mean of the first half.</param>
/// <param name="Second">The same for the second half.</param>
internal sealed record HalvedSignals(int FirstFrames, int SecondFrames, float[][] First, float[][] Second)
{
    // counted in blocks: half a million pixels or more give a good enough median
    private const int MaxRows = 24,
        MaxColumns = 32,
        MinBlocks = 20;

    // px of one channel: the larger a block, the better known its level
    private static readonly int[] sides = [32, 24, 16];

    /// <summary>
    /// Reads the blocks of every channel; null when the frame is too small to hold enough of them, or with fewer than 2
    /// frames.
    /// </summary>
    /// <param name="frames">Frames of one exposure at one temperature.</param>
    /// <param name="pedestal">Mean of every pixel at zero exposure, ADU.</param>
    /// <param name="mosaic">Which pixels share a channel.</param>
    /// <param name="gains">e-/ADU of each channel.</param>
    /// <param name="walk">Threads.</param>
    public static IReadOnlyList<HalvedSignals>? Collect(
        IReadOnlyList<IFrameSamples> frames,
        float[] pedestal,
        ColourMosaic mosaic,
        IReadOnlyList<double> gains,
        WalkOptions walk
    )
    {
        if (frames.Count < 2)
            return null;
        (int width, int height) = (frames[0].Width, frames[0].Height);
        int side = sides.FirstOrDefault(s =>
            Blocks(height, s * mosaic.Period) * Blocks(width, s * mosaic.Period) >= MinBlocks
        );
        if (side == 0)
            return null;
        int span = side * mosaic.Period,
            rows = Math.Min(MaxRows, Blocks(height, span)),
            columns = Math.Min(MaxColumns, Blocks(width, span));
        HalvedSignals[] channels =
        [
            .. Enumerable
                .Range(0, mosaic.Channels)
                .Select(_ => new HalvedSignals(
                    (frames.Count + 1) / 2,
                    frames.Count / 2,
                    new float[rows * columns][],
                    new float[rows * columns][]
                )),
        ];
        Parallel.For(
            0,
            rows,
            new ParallelOptions { MaxDegreeOfParallelism = walk.Threads, CancellationToken = walk.Cancellation },
            r =>
            {
                int top = Place(r, rows, height, span, mosaic.Period);
                (int[] first, int[] second) = Sums(frames, top, span, width);
                for (int c = 0; c < columns; c++)
                for (int channel = 0; channel < channels.Length; channel++)
                {
                    var block = new SignalBlock(
                        top,
                        Place(c, columns, width, span, mosaic.Period),
                        side,
                        width,
                        mosaic.Period,
                        channel,
                        gains[channel]
                    );
                    channels[channel].First[r * columns + c] = block.Signal(
                        first,
                        channels[channel].FirstFrames,
                        pedestal
                    );
                    channels[channel].Second[r * columns + c] = block.Signal(
                        second,
                        channels[channel].SecondFrames,
                        pedestal
                    );
                }
            }
        );
        return channels;
    }

    private static int Blocks(int length, int span) => length / span;

    /// <summary>
    /// First row (or column) of a block: blocks are centred in equal parts of the frame and start on a colour pattern.
    /// </summary>
    private static int Place(int index, int count, int length, int span, int period)
    {
        int middle = (int)((index + 0.5) * length / count),
            first = Math.Clamp(middle - span / 2, 0, length - span);
        return first - first % period;
    }

    private static (int[] First, int[] Second) Sums(IReadOnlyList<IFrameSamples> frames, int top, int rows, int width)
    {
        int[] first = new int[rows * width],
            second = new int[rows * width];
        var samples = new ushort[rows * width];
        for (int f = 0; f < frames.Count; f++)
        {
            frames[f].ReadRows(top, samples);
            int[] sums = f % 2 == 0 ? first : second;
            for (int i = 0; i < samples.Length; i++)
                sums[i] += samples[i];
        }
        return (first, second);
    }

    private readonly record struct SignalBlock(
        int Top,
        int Left,
        int Side,
        int Width,
        int Period,
        int Channel,
        double Gain
    )
    {
        public float[] Signal(int[] sums, int frames, float[] pedestal)
        {
            var signal = new float[Side * Side];
            for (int y = 0; y < Side; y++)
            for (int x = 0; x < Side; x++)
            {
                int row = y * Period + Channel / Period,
                    column = Left + x * Period + Channel % Period;
                signal[y * Side + x] = (float)(
                    Gain * ((double)sums[row * Width + column] / frames - pedestal[(Top + row) * Width + column])
                );
            }
            return signal;
        }
    }
}
