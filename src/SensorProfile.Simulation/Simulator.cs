using SensorProfile.Simulation.Truth;
using SensorProfile.Simulation.Writing;

namespace SensorProfile.Simulation;

/// <summary>Writes the night of a synthetic camera as FITS or DNG frames, with the truth behind them.</summary>
public static class Simulator
{
    /// <summary>
    /// Renders every frame of a camera's shots into a folder, then the truth maps (<c>truth/*.truth</c>, FITS images)
    /// and, last, <c>truth.json</c>.
    /// </summary>
    /// <remarks>
    /// A file gets its final name only when complete. The same camera and seed give the same bytes.
    /// </remarks>
    /// <param name="camera">The camera with its shots.</param>
    /// <param name="folder">Target folder; created if missing.</param>
    /// <param name="seed">Seed of the night.</param>
    /// <param name="options">Options; null for the defaults.</param>
    /// <param name="progress">Reported to after each frame.</param>
    /// <param name="cancellation">Cancels between rows and frames; completed files stay.</param>
    /// <returns>Names of the frames, in the order taken.</returns>
    /// <exception cref="CameraDescriptionException">The description has an invalid value.</exception>
    /// <exception cref="IOException">The disk is full, the folder cannot be written, or a name is taken.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static IReadOnlyList<string> Write(
        CameraDescription camera,
        string folder,
        ulong seed,
        SimulationOptions? options = null,
        IProgress<SimulationProgress>? progress = null,
        CancellationToken cancellation = default
    ) => [.. WriteTelling(camera, folder, seed, options, progress, cancellation).Frames.Select(f => f.File)];

    /// <summary>The same, and returns the content of <c>truth.json</c>.</summary>
    internal static SimulationTruth WriteTelling(
        CameraDescription camera,
        string folder,
        ulong seed,
        SimulationOptions? options = null,
        IProgress<SimulationProgress>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        options ??= new SimulationOptions();
        var night = new SimulatedNight(camera, seed);
        Directory.CreateDirectory(folder);
        ushort[] pixels = new ushort[camera.Width * camera.Height];
        for (int i = 0; i < night.Frames.Count; i++)
        {
            SimulatedFrame frame = night.Frames[i];
            cancellation.ThrowIfCancellationRequested();
            string name = options.FilePrefix + frame.FileName;
            ushort[] written = pixels;
            if (FrameWriter.HasBorder(camera, frame))
                written = night.RenderSensor(frame, pixels, options.Threads, cancellation);
            else
                night.Render(frame, pixels, options.Threads, cancellation);
            FrameWriter.Write(Path.Combine(folder, name), night.Sensor.Camera, frame, written, options.Overwrite);
            progress?.Report(new SimulationProgress(i + 1, night.Frames.Count, name));
        }
        SimulationTruth truth = SimulationTruth.Of(night, options.FilePrefix);
        if (options.WriteTruth)
        {
            TruthWriter.Write(folder, night, truth, options, cancellation);
        }
        return truth;
    }
}
