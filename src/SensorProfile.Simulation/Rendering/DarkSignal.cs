using SensorProfile.Simulation.Parameters.Physics;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>
/// Mean dark electrons of one exposure: ordinary pixels, hot pixels, glow. The telegraph part is in
/// <see cref="TelegraphStates"/>.
/// </summary>
internal sealed class DarkSignal
{
    private readonly Sensor _sensor;
    private readonly double _ordinary;
    private readonly double _floor;
    private readonly double[] _glow;
    private readonly double[] _hot;
    private readonly double _exposure;
    private readonly double _celsius;
    private readonly double _factor;
    private readonly bool _gradient;

    /// <summary>Computes what is common to all rows of an exposure.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="exposure">Exposure, s.</param>
    /// <param name="dieCelsius">Temperature of the die, °C.</param>
    /// <param name="factor">Factor on all of the dark signal and glow.</param>
    public DarkSignal(Sensor sensor, double exposure, double dieCelsius, double factor = 1)
    {
        (_sensor, _exposure, _celsius, _factor) = (sensor, exposure, dieCelsius, factor);
        _gradient = sensor.Camera.Physics is { } physics && (physics.GradientAcross != 0 || physics.GradientDown != 0);
        RateFactor = RelativeDarkCurrent.Factor(sensor.Dark, dieCelsius) * factor;
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
        double logFactor = Math.Log(RelativeDarkCurrent.Factor(sensor.Dark, dieCelsius));
        for (int i = 0; i < hot.Length; i++)
        {
            double growth =
                hot[i].Level is { } level ? level.Factor(Celsius(hot[i].Index), sensor.Dark.ReferenceTemperature)
                : _gradient
                    ? Math.Pow(RelativeDarkCurrent.Factor(sensor.Dark, Celsius(hot[i].Index)), hot[i].Activation)
                : Math.Exp(logFactor * hot[i].Activation);
            _hot[i] = hot[i].Rate * exposure * factor * growth;
        }
    }

    /// <summary>Ratio of the ordinary law at the die's temperature to that at the reference temperature.</summary>
    public double RateFactor { get; }

    /// <summary>Mean of the ordinary pixels, without hot pixels and glow, e-/px.</summary>
    public double OrdinaryElectrons => _floor + OrdinarySum() / ((double)_sensor.Camera.Width * _sensor.Camera.Height);

    /// <summary>Electrons added by a telegraph pixel that spends the whole exposure in its high state.</summary>
    public double HighElectrons(TelegraphPixel pixel)
    {
        double reference = _sensor.Dark.ReferenceTemperature;
        double growth = pixel.RateEnergy is { } energy
            ? DefectEnergy.Boltzmann(energy, Celsius(pixel.Index), reference) * _factor
            : RateFactor;
        return pixel.Rate * _exposure * growth;
    }

    /// <summary>Temperature of the die at a pixel: that at the centre plus the gradient.</summary>
    private double Celsius(int index)
    {
        if (!_gradient)
        {
            return _celsius;
        }
        (int row, int column) = Math.DivRem(index, _sensor.Camera.Width);
        SensorPhysics physics = _sensor.Camera.Physics!;
        return _celsius
            + physics.GradientAcross * ((column + 0.5) / _sensor.Camera.Width - 0.5)
            + physics.GradientDown * ((row + 0.5) / _sensor.Camera.Height - 0.5);
    }

    /// <summary>Electrons of a pixel that follows the ordinary law with a rate of 1 e-/px/s.</summary>
    private double OrdinaryAt(int index) =>
        _gradient ? RelativeDarkCurrent.Factor(_sensor.Dark, Celsius(index)) * _factor * _exposure : _ordinary;

    private double OrdinarySum()
    {
        if (!_gradient)
        {
            return _ordinary * _sensor.DarkRateSum;
        }
        double sum = 0;
        for (int i = 0; i < _sensor.DarkRate.Length; i++)
        {
            sum += OrdinaryAt(i) * _sensor.DarkRate[i];
        }
        return sum;
    }

    /// <summary>Mean over the frame, without telegraph pixels, e-/px.</summary>
    public double MeanElectrons
    {
        get
        {
            double sum = OrdinarySum() + _hot.Sum();
            for (int i = 0; i < _glow.Length; i++)
            {
                sum += _glow[i] * _sensor.GlowSums[i];
            }
            return _floor + sum / ((double)_sensor.Camera.Width * _sensor.Camera.Height);
        }
    }

    /// <summary>Computes the means of one row, e-.</summary>
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
                means[x] = (_gradient ? OrdinaryAt(row * width + x) : _ordinary) * rates[x] + _floor;
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
