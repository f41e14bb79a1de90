using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>A column or row that is bad from some pixel to its end.</summary>
/// <param name="IsRow">True for a row.</param>
/// <param name="Line">0-based column (or row).</param>
/// <param name="From">0-based row (or column) of its first bad pixel.</param>
/// <param name="Law">Parameters of the defect.</param>
internal readonly record struct BadLine(bool IsRow, int Line, int From, BadLines Law)
{
    // separate from the streams that choose dead pixels
    private const long ColumnStream = 2;
    private const long RowStream = 3;

    /// <summary>Bad columns, then bad rows, each in order.</summary>
    public static IReadOnlyList<BadLine> Choose(CameraDescription camera, ulong serial) =>
        [
            .. Choose(camera.BadColumns, false, camera.Width, camera.Height, serial),
            .. Choose(camera.BadRows, true, camera.Height, camera.Width, serial),
        ];

    /// <summary>Its bad pixels.</summary>
    public IEnumerable<int> Pixels(int width, int height)
    {
        (int first, int step, int count) = IsRow
            ? (Line * width + From, 1, width - From)
            : (From * width + Line, width, height - From);
        return Enumerable.Range(0, count).Select(k => first + k * step);
    }

    private static IEnumerable<BadLine> Choose(BadLines law, bool rows, int lines, int length, ulong serial)
    {
        var random = RandomStream.For(serial, Purpose.DeadPixels, rows ? RowStream : ColumnStream);
        var chosen = new SortedDictionary<int, int>();
        while (chosen.Count < law.Count)
        {
            chosen.TryAdd(random.NextIndex(lines), random.NextIndex(Math.Max(1, length / 2)));
        }
        return chosen.Select(c => new BadLine(rows, c.Key, c.Value, law));
    }
}
