using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Simulation.Randomness;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>Stars on one light frame: Gaussian images, the n-th brightest with 1/n of the light of the first.</summary>
internal sealed class StarField
{
    // in standard deviations; farther out the profile is below 4e-6 of the peak
    private const double Reach = 5;
    private readonly (double X, double Y, double Electrons)[] _stars;
    private readonly double _sigma;

    /// <summary>The star field of a sensor (each has its own), shifted by the pointing of the frame.</summary>
    public StarField(Sensor sensor, SimulatedFrame frame)
    {
        Stars law = sensor.Camera.Stars;
        _sigma = law.FullWidthHalfMaximum / Math.Sqrt(8 * Math.Log(2));
        var random = RandomStream.For(sensor.Serial, Purpose.Stars);
        _stars = new (double, double, double)[frame.Kind == FrameKind.Light ? law.Count : 0];
        for (int i = 0; i < _stars.Length; i++)
        {
            double x = random.NextUniform() * sensor.Camera.Width + frame.Dither.X;
            double y = random.NextUniform() * sensor.Camera.Height + frame.Dither.Y;
            _stars[i] = (x, y, law.Brightest / (i + 1) * frame.ExposureSeconds);
        }
    }

    /// <summary>Adds the mean electrons of one row.</summary>
    public void AddRow(int row, Span<double> means)
    {
        foreach ((double x, double y, double electrons) in _stars)
        {
            double dy = (row + 0.5 - y) / _sigma;
            if (Math.Abs(dy) > Reach)
            {
                continue;
            }
            double peak = electrons / (2 * Math.PI * _sigma * _sigma) * Math.Exp(-0.5 * dy * dy);
            int first = Math.Max(0, (int)(x - Reach * _sigma));
            int last = Math.Min(means.Length - 1, (int)(x + Reach * _sigma));
            for (int column = first; column <= last; column++)
            {
                double dx = (column + 0.5 - x) / _sigma;
                means[column] += peak * Math.Exp(-0.5 * dx * dx);
            }
        }
    }
}
