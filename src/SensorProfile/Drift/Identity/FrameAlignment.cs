using SensorProfile.NoiseModel;

namespace SensorProfile.Drift.Identity;

/// <summary>Where the pixels of one frame lie in another of the same sensor.</summary>
/// <param name="Orientation">The turn that brings the frame back.</param>
/// <param name="Width">Width of the frame before turning, px.</param>
/// <param name="Height">Height of the frame before turning, px.</param>
/// <param name="ShiftX">Columns to add after turning.</param>
/// <param name="ShiftY">Rows to add after turning.</param>
internal readonly record struct FrameAlignment(
    FrameOrientation Orientation,
    int Width,
    int Height,
    int ShiftX,
    int ShiftY
)
{
    /// <summary>Whether the frame already lies like the other.</summary>
    public bool IsIdentity => Orientation == FrameOrientation.AsIs && ShiftX == 0 && ShiftY == 0;

    /// <summary>Whether rows become columns.</summary>
    public bool SwapsSides => Orientation >= FrameOrientation.QuarterTurnClockwise;

    /// <summary>Width after turning, px.</summary>
    public int TurnedWidth => SwapsSides ? Height : Width;

    /// <summary>Height after turning, px.</summary>
    public int TurnedHeight => SwapsSides ? Width : Height;

    /// <summary>Position of one of this frame's pixels in the other frame; it may lie outside.</summary>
    public (int X, int Y) Moved(int x, int y)
    {
        (int right, int last) = (Width - 1 - x, Height - 1 - y);
        (int a, int b) = Orientation switch
        {
            FrameOrientation.HalfTurn => (right, last),
            FrameOrientation.MirrorColumns => (right, y),
            FrameOrientation.MirrorRows => (x, last),
            FrameOrientation.QuarterTurnClockwise => (last, x),
            FrameOrientation.QuarterTurnAnticlockwise => (y, right),
            FrameOrientation.Transpose => (y, x),
            FrameOrientation.AntiTranspose => (last, right),
            _ => (x, y),
        };
        return (a + ShiftX, b + ShiftY);
    }

    /// <summary>The inverse: position in this frame of a pixel of the other one; it may lie outside.</summary>
    public (int X, int Y) Origin(int x, int y)
    {
        (x, y) = (x - ShiftX, y - ShiftY);
        return Orientation switch
        {
            FrameOrientation.HalfTurn => (Width - 1 - x, Height - 1 - y),
            FrameOrientation.MirrorColumns => (Width - 1 - x, y),
            FrameOrientation.MirrorRows => (x, Height - 1 - y),
            FrameOrientation.QuarterTurnClockwise => (y, Height - 1 - x),
            FrameOrientation.QuarterTurnAnticlockwise => (Width - 1 - y, x),
            FrameOrientation.Transpose => (y, x),
            FrameOrientation.AntiTranspose => (Width - 1 - y, Height - 1 - x),
            _ => (x, y),
        };
    }

    /// <summary>Orientation of this frame relative to the other: "rotated by 180° and shifted by (1, 0) px".</summary>
    public string Words
    {
        get
        {
            string turned = Orientation switch
            {
                FrameOrientation.HalfTurn => "rotated by 180°",
                FrameOrientation.MirrorColumns => "mirrored left to right",
                FrameOrientation.MirrorRows => "mirrored top to bottom (its rows run the other way)",
                // the frame was turned the opposite way to what turns it back
                FrameOrientation.QuarterTurnClockwise => "rotated by 90° anticlockwise",
                FrameOrientation.QuarterTurnAnticlockwise => "rotated by 90° clockwise",
                FrameOrientation.Transpose => "mirrored along a diagonal (rows and columns exchanged)",
                FrameOrientation.AntiTranspose =>
                    "mirrored along the other diagonal (rows and columns exchanged, both reversed)",
                _ => "",
            };
            string shifted =
                ShiftX == 0 && ShiftY == 0 ? ""
                : ShiftY == 0 ? $"shifted by {Plain.Number(-ShiftX)} px in x"
                : ShiftX == 0 ? $"shifted by {Plain.Number(-ShiftY)} px in y"
                : $"shifted by {Plain.Number(-ShiftX)} px in x and {Plain.Number(-ShiftY)} px in y";
            return turned.Length > 0 && shifted.Length > 0 ? $"{turned} and {shifted}" : turned + shifted;
        }
    }
}
