using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Randomness;

namespace SensorProfile.Simulation.Rendering;

/// <summary>Charge from particle hits in one frame.</summary>
internal static class CosmicRayHits
{
    /// <summary>Pixels and charges by row; empty without hits.</summary>
    public static ILookup<int, (int Column, double Electrons)> Draw(
        CameraDescription camera,
        SimulatedFrame frame,
        ulong seed
    )
    {
        CosmicRays rays = camera.CosmicRays;
        var hits = new List<(int Row, int Column, double Electrons)>();
        var random = RandomStream.For(seed, Purpose.CosmicRays, frame.Index);
        double expected = rays.HitsPerMegapixelSecond * frame.ExposureSeconds * camera.Width * camera.Height / 1e6;
        double count = Poisson.Draw(ref random, expected);
        for (int hit = 0; hit < count; hit++)
        {
            double x = random.NextUniform() * camera.Width;
            double y = random.NextUniform() * camera.Height;
            double angle = 2 * Math.PI * random.NextUniform();
            double charge = rays.ElectronsPerPixel * random.NextExponential();
            int steps = 1 + (int)(rays.Length * random.NextExponential());
            for (int step = 0; step < steps; step++)
            {
                int column = (int)Math.Floor(x + step * Math.Cos(angle));
                int row = (int)Math.Floor(y + step * Math.Sin(angle));
                if (column >= 0 && column < camera.Width && row >= 0 && row < camera.Height)
                {
                    hits.Add((row, column, charge));
                }
            }
        }
        return hits.ToLookup(h => h.Row, h => (h.Column, h.Electrons));
    }
}
