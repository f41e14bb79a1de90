using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Rendering;

/// <summary>Renders the masked pixels of one frame.</summary>
/// <param name="camera">The camera at its age.</param>
/// <param name="frame">The frame.</param>
/// <param name="darkElectrons">Mean dark electrons of the frame's ordinary pixels.</param>
/// <param name="pedestal">Level of this frame relative to the camera's, ADU.</param>
/// <param name="rowNoise">Noise of the exposed rows, e-.</param>
/// <param name="seed">Seed of the night.</param>
internal sealed class BorderRenderer(
    CameraDescription camera,
    SimulatedFrame frame,
    double darkElectrons,
    double pedestal,
    double[] rowNoise,
    ulong seed
)
{
    private readonly MaskedBorder border = camera.MaskedBorder;

    /// <summary>Adds the border around the exposed pixels.</summary>
    public ushort[] Around(ushort[] pixels)
    {
        int width = camera.Width + border.Left;
        var all = new ushort[width * (camera.Height + border.Top)];
        for (int row = 0; row < camera.Height + border.Top; row++)
        {
            Span<ushort> whole = all.AsSpan(row * width, width);
            var random = RandomStream.For(seed, Purpose.Border, frame.Index, row);
            if (row < border.Top)
            {
                Mask(whole, camera.RowNoise * random.NextNormal(), random);
                continue;
            }
            int active = row - border.Top;
            Mask(whole[..border.Left], rowNoise[active], random);
            pixels.AsSpan(active * camera.Width, camera.Width).CopyTo(whole[border.Left..]);
        }
        return all;
    }

    private void Mask(Span<ushort> codes, double noiseOfRow, RandomStream random)
    {
        int top = (1 << camera.Bits) - 1;
        double level = camera.BiasLevel + border.LevelOffset + pedestal;
        for (int x = 0; x < codes.Length; x++)
        {
            double electrons =
                Poisson.Draw(ref random, border.DarkShare * darkElectrons)
                + (camera.ReadNoise * random.NextNormal())
                + noiseOfRow;
            double code = (level + (electrons / camera.Gain)) / camera.CodeStep;
            codes[x] = (ushort)(FrameRenderer.Code(code, top) * camera.CodeStep);
        }
    }
}
