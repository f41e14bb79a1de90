using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>
/// In-camera processing of the codes before they are stored: suppression of hot pixels, smoothing and scaling per
/// colour, in this order.
/// </summary>
internal static class CodeProcessing
{
    /// <summary>Processes the pixels in place.</summary>
    public static void Apply(CameraDescription camera, ushort[] pixels)
    {
        InCamera process = camera.InCamera;
        if (process.HotPixelThreshold is { } threshold)
        {
            SuppressHotPixels(camera, pixels, threshold);
        }
        if (process.Smoothing > 0)
        {
            Smooth(camera, pixels, process.Smoothing);
        }
        if (camera.ColourFilter is not null && process is not { ScaleRed: 1, ScaleGreen: 1, ScaleBlue: 1 })
        {
            Scale(camera, pixels);
        }
    }

    private static void SuppressHotPixels(CameraDescription camera, ushort[] pixels, double threshold)
    {
        ushort[] raw = [.. pixels];
        int period = camera.ColourFilter is null ? 1 : 2;
        for (int y = period; y < camera.Height - period; y++)
        {
            for (int x = period; x < camera.Width - period; x++)
            {
                int largest = 0;
                for (int dy = -period; dy <= period; dy += period)
                {
                    for (int dx = -period; dx <= period; dx += period)
                    {
                        largest =
                            dx == 0 && dy == 0 ? largest : Math.Max(largest, raw[(y + dy) * camera.Width + x + dx]);
                    }
                }
                int at = y * camera.Width + x;
                pixels[at] = raw[at] > largest + threshold ? (ushort)largest : raw[at];
            }
        }
    }

    private static void Smooth(CameraDescription camera, ushort[] pixels, double weight)
    {
        ushort[] raw = [.. pixels];
        int period = camera.ColourFilter is null ? 1 : 2;
        for (int y = period; y < camera.Height - period; y++)
        {
            for (int x = period; x < camera.Width - period; x++)
            {
                int at = y * camera.Width + x;
                int around =
                    raw[at - period]
                    + raw[at + period]
                    + raw[at - period * camera.Width]
                    + raw[at + period * camera.Width];
                pixels[at] = Rounded((1 - weight) * raw[at] + weight * around / 4, camera);
            }
        }
    }

    private static void Scale(CameraDescription camera, ushort[] pixels)
    {
        for (int y = 0; y < camera.Height; y++)
        {
            for (int x = 0; x < camera.Width; x++)
            {
                int at = y * camera.Width + x;
                pixels[at] = Rounded(pixels[at] * ColourFilter.Scale(camera, x, y), camera);
            }
        }
    }

    private static ushort Rounded(double value, CameraDescription camera)
    {
        double code = Math.Floor(value / camera.CodeStep + 0.5);
        return (ushort)(Math.Min(code, (1 << camera.Bits) - 1) * camera.CodeStep);
    }
}
