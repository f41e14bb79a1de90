using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Pixels;

namespace SensorProfile.Fits.Tiles;

/// <summary>
/// Pixels in compressed tiles. The latest tiles are cached, so that reading rows in order unpacks each tile once.
/// </summary>
internal sealed class TilePixelStore(TileDecoder decoder, TileGrid grid, int elementBytes) : PixelStore
{
    private readonly Lock gate = new();
    private readonly Dictionary<int, byte[]> tiles = [];
    private readonly Queue<int> order = new();
    private readonly int kept = (int)Math.Min(1024, grid.Count(0) + 1);

    public override void Read(long firstPixel, Span<byte> numbers, bool flipTopBit)
    {
        Span<byte> rest = numbers;
        for (long pixel = firstPixel; rest.Length > 0; )
        {
            (int tile, int offset, int run) = grid.Find(pixel);
            int count = Math.Min(run, rest.Length / elementBytes);
            Unpacked(tile).AsSpan(offset * elementBytes, count * elementBytes).CopyTo(rest);
            pixel += count;
            rest = rest[(count * elementBytes)..];
        }

        ByteOrder.FlipTopBit(numbers, elementBytes, flipTopBit);
    }

    private byte[] Unpacked(int tile)
    {
        lock (gate)
        {
            if (tiles.TryGetValue(tile, out byte[]? known))
                return known;
        }

        // two threads may unpack the same tile, which is better than waiting for each other
        byte[] unpacked = decoder.Decode(tile);
        lock (gate)
        {
            if (!tiles.TryAdd(tile, unpacked))
                return unpacked;
            order.Enqueue(tile);
            if (order.Count > kept)
                tiles.Remove(order.Dequeue());
        }

        return unpacked;
    }
}
