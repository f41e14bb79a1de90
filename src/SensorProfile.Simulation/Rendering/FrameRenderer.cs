using System.Buffers;
using SensorProfile.Frames;
using SensorProfile.Simulation.Randomness;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation.Rendering;

/// <summary>
/// Renders the pixels of a frame from its conditions. Every row has its own random stream, so rows may be computed in
/// any order.
/// </summary>
internal sealed class FrameRenderer
{
    private readonly Sensor _sensor;
    private readonly CameraDescription _camera;
    private readonly SimulatedFrame _frame;
    private readonly TelegraphStates _telegraph;
    private readonly ulong _seed;
    private readonly DarkSignal _dark;
    private readonly StarField _stars;
    private readonly ILookup<int, (int Column, double Electrons)> _hits;
    private readonly double[] _columnNoise;
    private readonly double _pedestal;
    private readonly double[] _rowNoise;
    private readonly bool _exposed;

    /// <summary>Computes what is common to all rows of the frame.</summary>
    public FrameRenderer(Sensor sensor, SimulatedFrame frame, TelegraphStates telegraph, ulong seed)
    {
        (_sensor, _camera, _frame, _telegraph, _seed) = (sensor, sensor.Camera, frame, telegraph, seed);
        _dark = new DarkSignal(sensor, frame.ExposureSeconds, frame.DieCelsius, frame.DarkFactor);
        _stars = new StarField(sensor, frame);
        _hits = CosmicRayHits.Draw(_camera, frame, seed);
        _columnNoise = ColumnNoise();
        _rowNoise = new double[_camera.Height];
        _pedestal = frame.PedestalOffset - (_camera.ClampBlack ? MeanDarkElectrons() / _camera.Gain : 0);
        _exposed = frame.ExposureSeconds > 0 || frame.LightElectrons > 0;
    }

    /// <summary>Renders the whole frame.</summary>
    /// <param name="pixels">Width × height values, row by row.</param>
    /// <param name="options">Threads and cancellation; they do not change the result.</param>
    public void Render(ushort[] pixels, ParallelOptions options)
    {
        int width = _camera.Width;
        Parallel.For(0, _camera.Height, options, row => RenderRow(row, pixels.AsSpan(row * width, width)));
        CodeProcessing.Apply(_camera, pixels);
    }

    /// <summary>Adds the masked border, row after row; call after <see cref="Render"/>.</summary>
    /// <param name="pixels">Output of <see cref="Render"/>.</param>
    public ushort[] WithBorder(ushort[] pixels) =>
        new BorderRenderer(_camera, _frame, _exposed ? _dark.OrdinaryElectrons : 0, _pedestal, _rowNoise, _seed).Around(
            pixels
        );

    private void RenderRow(int row, Span<ushort> codes)
    {
        double[] signalBuffer = ArrayPool<double>.Shared.Rent(codes.Length);
        double[] meanBuffer = ArrayPool<double>.Shared.Rent(codes.Length);
        Span<double> signal = signalBuffer.AsSpan(0, codes.Length);
        var random = RandomStream.For(_seed, Purpose.Row, _frame.Index, row);
        if (_exposed && !(row >= _frame.TornFromRow))
        {
            Collect(row, meanBuffer.AsSpan(0, codes.Length), signal, ref random);
        }
        else
        {
            signal.Clear();
        }
        AddNoise(row, signal, ref random);
        Digitise(row, signal, codes);
        ArrayPool<double>.Shared.Return(signalBuffer);
        ArrayPool<double>.Shared.Return(meanBuffer);
    }

    /// <summary>
    /// Electrons in the pixels of a row at the end of the exposure, after the bend of the response.
    /// </summary>
    private void Collect(int row, Span<double> means, Span<double> electrons, ref RandomStream random)
    {
        SetMeans(row, means);
        DrawElectrons(means, electrons, ref random);
        if (_camera.BrighterFatter != 0)
        {
            NarrowSpread(means, electrons);
        }
        foreach ((int column, double charge) in _hits[row])
        {
            electrons[column] += charge;
        }
        if (_camera.FullWell is { } well)
        {
            for (int x = 0; x < electrons.Length; x++)
            {
                electrons[x] = Math.Min(electrons[x], well);
            }
        }
        if (_camera.Nonlinearity != 0)
        {
            double bend = _camera.Nonlinearity / _sensor.FullScaleElectrons;
            double turn = bend > 0 ? 0.5 / bend : double.PositiveInfinity; // beyond it the parabola would descend
            for (int x = 0; x < electrons.Length; x++)
            {
                double held = Math.Min(electrons[x], turn);
                electrons[x] = held * (1 - bend * held);
            }
        }
    }

    private void SetMeans(int row, Span<double> means)
    {
        int width = means.Length;
        _dark.SetRow(row, means);
        int first = _sensor.Telegraph.FirstOf(row);
        ReadOnlySpan<TelegraphPixel> telegraph = _sensor.Telegraph.InRow(row);
        for (int i = 0; i < telegraph.Length; i++)
        {
            double share = _telegraph.HighShare(_frame.Index, first + i);
            means[telegraph[i].Index - row * width] += _dark.HighElectrons(telegraph[i]) * share;
        }
        if (_frame.LightElectrons > 0)
        {
            double light = _frame.LightElectrons * Flicker(row);
            ReadOnlySpan<float> response = _sensor.Response.AsSpan(row * width, width);
            for (int x = 0; x < means.Length; x++)
            {
                means[x] += light * response[x];
            }
        }
        if (_frame.PersistenceElectrons > 0)
        {
            ReadOnlySpan<float> response = _sensor.Response.AsSpan(row * width, width);
            for (int x = 0; x < means.Length; x++)
            {
                means[x] += _frame.PersistenceElectrons * response[x];
            }
        }
        if (_frame.LeakElectrons > 0)
        {
            AddLeak(row, means);
        }
        _stars.AddRow(row, means);
    }

    /// <summary>4·x·y over the unit square: strongest at the last corner, with mean 1.</summary>
    private void AddLeak(int row, Span<double> means)
    {
        double scale = 4 * _frame.LeakElectrons * (row + 0.5) / _camera.Height / means.Length;
        for (int x = 0; x < means.Length; x++)
        {
            means[x] += scale * (x + 0.5);
        }
    }

    private double Flicker(int row) =>
        _frame.Kind == FrameKind.Flat && _camera.Lamp.FlickerAmplitude > 0
            ? 1
                + _camera.Lamp.FlickerAmplitude
                    * Math.Sin(2 * Math.PI * row / _camera.Lamp.FlickerRows + _frame.FlickerPhase)
            : 1;

    private static void DrawElectrons(ReadOnlySpan<double> means, Span<double> electrons, ref RandomStream random)
    {
        // a copy whose address does not leave the loop stays in registers
        RandomStream local = random;
        for (int x = 0; x < electrons.Length; x++)
        {
            electrons[x] = Poisson.Draw(ref local, means[x]);
        }
        random = local;
    }

    /// <summary>
    /// Brighter-fatter effect to first order: the deviation from the mean shrinks so that the variance is μ·(1 + aμ).
    /// </summary>
    private void NarrowSpread(ReadOnlySpan<double> means, Span<double> electrons)
    {
        for (int x = 0; x < electrons.Length; x++)
        {
            double narrowing = Math.Sqrt(Math.Max(0, 1 + _camera.BrighterFatter * means[x]));
            electrons[x] = means[x] + (electrons[x] - means[x]) * narrowing;
        }
    }

    private void AddNoise(int row, Span<double> signal, ref RandomStream random)
    {
        int width = signal.Length;
        RandomStream local = random;
        double rowNoise = _camera.RowNoise > 0 ? _camera.RowNoise * local.NextNormal() : 0;
        _rowNoise[row] = rowNoise;
        if (_sensor.ReadNoise.Length > 0)
        {
            ReadOnlySpan<float> noise = _sensor.ReadNoise.AsSpan(row * width, width);
            for (int x = 0; x < signal.Length; x++)
            {
                signal[x] += noise[x] * local.NextNormal() + rowNoise;
            }
        }
        else if (_camera.ReadNoise > 0 || rowNoise != 0)
        {
            double noise = _camera.ReadNoise;
            for (int x = 0; x < signal.Length; x++)
            {
                signal[x] += noise * local.NextNormal() + rowNoise;
            }
        }
        for (int x = 0; x < _columnNoise.Length; x++)
        {
            signal[x] += _columnNoise[x];
        }
        AddTelegraphLevels(row, signal);
        random = local;
    }

    private void AddTelegraphLevels(int row, Span<double> signal)
    {
        int first = _sensor.Telegraph.FirstOf(row);
        ReadOnlySpan<TelegraphPixel> telegraph = _sensor.Telegraph.InRow(row);
        for (int i = 0; i < telegraph.Length; i++)
        {
            if (_telegraph.HighAtEnd(_frame.Index, first + i))
            {
                signal[telegraph[i].Index - row * signal.Length] += telegraph[i].Amplitude;
            }
        }
    }

    private void Digitise(int row, ReadOnlySpan<double> signal, Span<ushort> codes)
    {
        int step = _camera.CodeStep;
        int top = (1 << _camera.Bits) - 1;
        double perElectron = 1 / (_camera.Gain * step);
        if (_sensor.BiasLevel.Length > 0)
        {
            ReadOnlySpan<float> levels = _sensor.BiasLevel.AsSpan(row * codes.Length, codes.Length);
            for (int x = 0; x < codes.Length; x++)
            {
                codes[x] = (ushort)(Code((levels[x] + _pedestal) / step + signal[x] * perElectron, top) * step);
            }
            return;
        }
        double level = (_camera.BiasLevel + _pedestal) / step;
        for (int x = 0; x < codes.Length; x++)
        {
            codes[x] = (ushort)(Code(level + signal[x] * perElectron, top) * step);
        }
    }

    /// <summary>Nearest code; for a non-negative value, truncation equals the floor.</summary>
    internal static int Code(double value, int top) => (int)Math.Min(Math.Max(value + 0.5, 0), top);

    private double[] ColumnNoise()
    {
        if (_camera.ColumnNoise == 0)
        {
            return [];
        }
        var random = RandomStream.For(_seed, Purpose.Columns, _frame.Index);
        double[] noise = new double[_camera.Width];
        for (int x = 0; x < noise.Length; x++)
        {
            noise[x] = _camera.ColumnNoise * random.NextNormal();
        }
        return noise;
    }

    private double MeanDarkElectrons()
    {
        double telegraph = 0;
        ReadOnlySpan<TelegraphPixel> pixels = _sensor.Telegraph.All;
        for (int i = 0; i < pixels.Length; i++)
        {
            telegraph += _dark.HighElectrons(pixels[i]) * _telegraph.HighShare(_frame.Index, i);
        }
        return _dark.MeanElectrons + telegraph / ((double)_camera.Width * _camera.Height);
    }
}
