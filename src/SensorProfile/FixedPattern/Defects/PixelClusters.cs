namespace SensorProfile.FixedPattern.Defects;

/// <summary>Finds groups of touching pixels.</summary>
internal static class PixelClusters
{
    /// <summary>
    /// Groups of at least <paramref name="least"/> pixels that touch at an edge or a corner, in order of their first
    /// pixel.
    /// </summary>
    /// <param name="width">px.</param>
    /// <param name="height">px.</param>
    /// <param name="belongs">Whether a pixel (by its index) belongs to any group.</param>
    /// <param name="least">Minimum number of pixels in a group.</param>
    public static IReadOnlyList<IReadOnlyList<int>> Find(int width, int height, Func<int, bool> belongs, int least = 3)
    {
        var seen = new HashSet<int>();
        var groups = new List<IReadOnlyList<int>>();
        var open = new Stack<int>();
        for (int start = 0; start < width * height; start++)
        {
            if (!belongs(start) || !seen.Add(start))
                continue;
            var group = new List<int>();
            for (open.Push(start); open.TryPop(out int pixel); )
            {
                group.Add(pixel);
                int row = pixel / width,
                    column = pixel % width;
                for (int y = Math.Max(0, row - 1); y <= Math.Min(height - 1, row + 1); y++)
                for (int x = Math.Max(0, column - 1); x <= Math.Min(width - 1, column + 1); x++)
                    if (belongs(y * width + x) && seen.Add(y * width + x))
                        open.Push(y * width + x);
            }
            if (group.Count >= least)
                groups.Add(group);
        }
        return groups;
    }
}
