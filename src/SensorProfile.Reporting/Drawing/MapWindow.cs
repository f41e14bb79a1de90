namespace SensorProfile.Reporting.Drawing;

/// <summary>The part of a sensor that a picture shows, px; it always lies within the sensor.</summary>
/// <param name="Left">First column, from 0.</param>
/// <param name="Top">First row of the file, from 0.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="SensorWidth">Columns of the whole map.</param>
/// <param name="SensorHeight">Rows of the whole map.</param>
internal sealed record MapWindow(int Left, int Top, int Width, int Height, int SensorWidth, int SensorHeight)
{
    private const int SmallestSide = 12;

    /// <summary>The window over a whole map.</summary>
    public static MapWindow Whole(int width, int height) => new(0, 0, width, height, width, height);

    /// <summary>Whether the window shows less than the whole sensor.</summary>
    public bool IsPart => Width < SensorWidth || Height < SensorHeight;

    /// <summary>Whether it can zoom in further.</summary>
    public bool CanComeCloser => Width > SmallestSide && Height > SmallestSide;

    /// <summary>A window with these edges, moved and clipped to lie within the map.</summary>
    public MapWindow Within(int left, int top, int width, int height)
    {
        int columns = Math.Clamp(width, 1, SensorWidth),
            rows = Math.Clamp(height, 1, SensorHeight);
        return this with
        {
            Width = columns,
            Height = rows,
            Left = Math.Clamp(left, 0, SensorWidth - columns),
            Top = Math.Clamp(top, 0, SensorHeight - rows),
        };
    }

    /// <summary>Zooms in: half the sides, around a pixel.</summary>
    public MapWindow Closer(int x, int y) => CanComeCloser ? Around(x, y, (Width + 1) / 2, (Height + 1) / 2) : this;

    /// <summary>Zooms out: twice the sides, around a pixel.</summary>
    public MapWindow Farther(int x, int y) =>
        Around(x, y, Math.Min(SensorWidth, 2 * Width), Math.Min(SensorHeight, 2 * Height));

    /// <summary>The window moved right and down by a number of quarters of its sides.</summary>
    public MapWindow Moved(int quartersRight, int quartersDown) =>
        Within(
            Left + quartersRight * Math.Max(1, Width / 4),
            Top + quartersDown * Math.Max(1, Height / 4),
            Width,
            Height
        );

    /// <summary>A window of the same size, centred on a pixel.</summary>
    public MapWindow CentredOn(int x, int y) => Around(x, y, Width, Height);

    /// <summary>The pixel in the middle.</summary>
    public (int X, int Y) Middle => (Left + Width / 2, Top + Height / 2);

    /// <summary>The pixel at a place of the picture, both from 0 at its upper left corner to 1.</summary>
    public (int X, int Y) At(double right, double down) =>
        (Left + Math.Clamp((int)(right * Width), 0, Width - 1), Top + Math.Clamp((int)(down * Height), 0, Height - 1));

    /// <summary>The column and row of a pixel within this part; null outside.</summary>
    public (int X, int Y)? Find(int x, int y) =>
        x >= Left && x < Left + Width && y >= Top && y < Top + Height ? (x - Left, y - Top) : null;

    private MapWindow Around(int x, int y, int width, int height) =>
        Within(x - width / 2, y - height / 2, width, height);
}
