using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Sensors;

/// <summary>Positions of the groups of hot pixels.</summary>
/// <remarks>
/// A group grows from a random pixel: repeatedly, a random member takes in one of its four neighbours. Pixels of
/// another group and their eight neighbours are excluded; a group that runs out of room starts again elsewhere.
/// </remarks>
internal static class ClusterPlaces
{
    private const int TriesPerPixel = 100;

    /// <summary>
    /// Area needed per pixel of a group, including its surroundings; with this much room a place is always found.
    /// </summary>
    public const int RoomPerPixel = 25;

    /// <summary>The pixels of each group, ordered by position.</summary>
    public static IReadOnlyList<int[]> Draw(CameraDescription camera, ulong serial)
    {
        HotClusters law = camera.HotClusters;
        var random = RandomStream.For(serial, Purpose.HotClusters);
        var taken = new HashSet<int>();
        var groups = new List<int[]>();
        while (groups.Count < law.Count)
        {
            int[] group = Grow(camera, law.Size, taken, ref random);
            if (group.Length < law.Size)
            {
                continue;
            }
            groups.Add([.. group.Order()]);
            foreach (int pixel in group)
            {
                taken.UnionWith(Around(pixel, camera.Width, camera.Height));
            }
        }
        return groups;
    }

    private static int[] Grow(CameraDescription camera, int size, HashSet<int> taken, ref RandomStream random)
    {
        int start = random.NextIndex(camera.Width * camera.Height);
        if (taken.Contains(start))
        {
            return [];
        }
        var group = new List<int> { start };
        for (int tries = 0; group.Count < size && tries < TriesPerPixel * size; tries++)
        {
            int from = group[random.NextIndex(group.Count)];
            (int right, int down) = random.NextIndex(4) switch
            {
                0 => (1, 0),
                1 => (-1, 0),
                2 => (0, 1),
                _ => (0, -1),
            };
            int column = from % camera.Width + right,
                row = from / camera.Width + down,
                next = row * camera.Width + column;
            if (
                column >= 0
                && column < camera.Width
                && row >= 0
                && row < camera.Height
                && !taken.Contains(next)
                && !group.Contains(next)
            )
            {
                group.Add(next);
            }
        }
        return [.. group];
    }

    private static IEnumerable<int> Around(int pixel, int width, int height)
    {
        for (int y = Math.Max(0, pixel / width - 1); y <= Math.Min(height - 1, pixel / width + 1); y++)
        {
            for (int x = Math.Max(0, pixel % width - 1); x <= Math.Min(width - 1, pixel % width + 1); x++)
            {
                yield return y * width + x;
            }
        }
    }
}
