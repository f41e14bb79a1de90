using SensorProfile.Simulation.Rendering;
using SensorProfile.Simulation.Sensors;

namespace SensorProfile.Simulation;

/// <summary>
/// A night of a synthetic camera in memory: its frames, rendered on demand, and the truth behind them.
/// </summary>
/// <remarks>
/// The same camera and seed give the same bits, whatever the number of threads and the order in which frames are
/// rendered. Safe to use from several threads.
/// </remarks>
internal sealed class SimulatedNight
{
    private readonly TelegraphStates _telegraph;

    /// <summary>Draws the sensor and schedules the night; no frame is rendered yet.</summary>
    /// <param name="camera">The camera with its shots.</param>
    /// <param name="seed">Seed of the night: noise, jitter, hits.</param>
    /// <exception cref="CameraDescriptionException">The description has an invalid value.</exception>
    public SimulatedNight(CameraDescription camera, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(camera);
        camera.Validate();
        (Camera, Seed) = (camera, seed);
        Sensor = SensorFactory.Build(camera, seed);
        Frames = NightPlan.Plan(Sensor, seed);
        _telegraph = new TelegraphStates(Sensor, Frames, seed);
    }

    /// <summary>The camera as described.</summary>
    public CameraDescription Camera { get; }

    /// <summary>Seed of the night.</summary>
    public ulong Seed { get; }

    /// <summary>The frames in the order taken.</summary>
    public IReadOnlyList<SimulatedFrame> Frames { get; }

    /// <summary>The individual sensor.</summary>
    internal Sensor Sensor { get; }

    /// <summary>Renders a frame into a new array.</summary>
    /// <param name="frame">One of <see cref="Frames"/>.</param>
    /// <param name="threads">Largest number of threads; −1 for as many as there are processors.</param>
    /// <param name="cancellation">Cancels the work.</param>
    /// <returns>Width × height stored values, row by row.</returns>
    public ushort[] Render(SimulatedFrame frame, int threads = -1, CancellationToken cancellation = default)
    {
        ushort[] pixels = new ushort[Camera.Width * Camera.Height];
        Render(frame, pixels, threads, cancellation);
        return pixels;
    }

    /// <summary>Renders a frame into a given array.</summary>
    /// <param name="frame">One of <see cref="Frames"/>.</param>
    /// <param name="pixels">Receives width × height values, row by row.</param>
    /// <param name="threads">Largest number of threads; −1 for as many as there are processors.</param>
    /// <param name="cancellation">Cancels the work.</param>
    public void Render(
        SimulatedFrame frame,
        ushort[] pixels,
        int threads = -1,
        CancellationToken cancellation = default
    ) => Rendered(frame, pixels, threads, cancellation);

    /// <summary>
    /// Like <see cref="Render(SimulatedFrame, ushort[], int, CancellationToken)"/>, with the masked border.
    /// </summary>
    /// <returns>All pixels of the sensor, row by row.</returns>
    public ushort[] RenderSensor(
        SimulatedFrame frame,
        ushort[] pixels,
        int threads = -1,
        CancellationToken cancellation = default
    ) => Rendered(frame, pixels, threads, cancellation).WithBorder(pixels);

    private FrameRenderer Rendered(SimulatedFrame frame, ushort[] pixels, int threads, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(pixels);
        if (pixels.Length != Camera.Width * Camera.Height)
        {
            throw new ArgumentException(
                $"{pixels.Length} values cannot hold a frame of {Camera.Width} × {Camera.Height}.",
                nameof(pixels)
            );
        }
        var options = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancellation };
        var renderer = new FrameRenderer(Sensor, frame, _telegraph, Seed);
        renderer.Render(pixels, options);
        return renderer;
    }
}
