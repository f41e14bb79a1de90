using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>
/// Mean dark electrons of one exposure: ordinary pixels, hot pixels, glow. The telegraph part comes from
/// <see cref="TelegraphStates"/>.
/// </summary>
internal sealed class DarkSignal
{
    private readonly Sensor _sensor;
    private readonly double _ordinary;
    private readonly double _floor;
    private readonly double[] _glow;
    private readonly double[] _hot;

    /// <summary>Prepares what all rows share.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="exposure">s.</param>
    /// <param name="dieCelsius">Temperature of the die.</param>
    /// <param name="factor">Factor on everything.</param>
    public DarkSignal(Sensor sensor, double exposure, double dieCelsius, double factor = 1)
    {
        _sensor = sensor;
        RateFactor = TemperatureLaw.Factor(sensor.Dark, dieCelsius) * factor;
        _ordinary = RateFactor * exposure;
        _floor = sensor.Dark.Floor * exposure * factor;
        _glow =
        [
            .. sensor.Camera.Glow.Select(g =>
                factor * GlowMap.PeakElectrons(g, exposure, dieCelsius, sensor.Dark.ReferenceTemperature)
            ),
        ];
        ReadOnlySpan<HotPixel> hot = sensor.Hot.All;
        _hot = new double[hot.Length];
        double logFactor = Math.Log(TemperatureLaw.Factor(sensor.Dark, dieCelsius));
        for (int i = 0; i < hot.Length; i++)
        {
            _hot[i] = hot[i].Rate * exposure * factor * Math.Exp(logFactor * hot[i].Activation);
        }
    }

    /// <summary>Rate of the ordinary law at the die's temperature over that at the reference temperature.</summary>
    public double RateFactor { get; }

    /// <summary>Mean of the ordinary pixels, without hot pixels and glow, e-/px.</summary>
    public double OrdinaryElectrons =>
        _floor + _ordinary * _sensor.DarkRateSum / ((double)_sensor.Camera.Width * _sensor.Camera.Height);

    /// <summary>Mean over the frame, telegraph pixels not included, e-/px.</summary>
    public double MeanElectrons
    {
        get
        {
            double sum = _ordinary * _sensor.DarkRateSum + _hot.Sum();
            for (int i = 0; i < _glow.Length; i++)
            {
                sum += _glow[i] * _sensor.GlowSums[i];
            }
            return _floor + sum / ((double)_sensor.Camera.Width * _sensor.Camera.Height);
        }
    }

    /// <summary>Sets the means of one row, e-.</summary>
    public void SetRow(int row, Span<double> means)
    {
        int width = means.Length;
        if (_sensor.DarkRate.Length == 0)
        {
            means.Fill(_floor);
        }
        else
        {
            ReadOnlySpan<float> rates = _sensor.DarkRate.AsSpan(row * width, width);
            for (int x = 0; x < means.Length; x++)
            {
                means[x] = _ordinary * rates[x] + _floor;
            }
        }
        for (int i = 0; i < _glow.Length; i++)
        {
            double peak = _glow[i];
            ReadOnlySpan<float> shape = _sensor.GlowShapes[i].AsSpan(row * width, width);
            for (int x = 0; x < means.Length; x++)
            {
                means[x] += peak * shape[x];
            }
        }
        int first = _sensor.Hot.FirstOf(row);
        ReadOnlySpan<HotPixel> hot = _sensor.Hot.InRow(row);
        for (int i = 0; i < hot.Length; i++)
        {
            means[hot[i].Index - row * width] += _hot[first + i];
        }
    }
}
