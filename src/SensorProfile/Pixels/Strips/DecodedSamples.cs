using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Pixels.Strips;

/// <summary>Decoded frames in one temporary file, which disappears when the work ends, however it ends.</summary>
/// <remarks>
/// A measurement walks the frames about ten times, several strips at once, but compressed samples can only be decoded
/// from their start. So each frame is decoded once and its rows are kept here, two bytes a sample. In memory, 60 frames
/// of 24 million pixels would take 2.9 GB.
/// </remarks>
internal sealed class DecodedSamples : IDisposable
{
    private readonly SafeFileHandle _file;

    private DecodedSamples(SafeFileHandle file) => _file = file;

    /// <summary>Makes a file with room for the samples; null when the disk is too full.</summary>
    /// <param name="samples">Samples of all frames together.</param>
    /// <param name="folder">Folder for the file; by default the one for large temporary files.</param>
    public static DecodedSamples? Make(long samples, string? folder = null)
    {
        string path = Path.Combine(folder ?? Folder(), $"sensorprofile-{Path.GetRandomFileName()}");
        try
        {
            SafeFileHandle file = File.OpenHandle(
                path,
                FileMode.CreateNew,
                FileAccess.ReadWrite,
                FileShare.Delete,
                FileOptions.DeleteOnClose | FileOptions.RandomAccess,
                preallocationSize: samples * sizeof(ushort)
            );
            if (!OperatingSystem.IsWindows())
                File.Delete(path); // the open file lives on, and nothing is left behind even if the process is killed
            return new DecodedSamples(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Stores samples.</summary>
    /// <param name="at">Index of the first sample in the file.</param>
    /// <param name="samples">The samples.</param>
    public void Write(long at, ReadOnlySpan<ushort> samples) =>
        RandomAccess.Write(_file, MemoryMarshal.AsBytes(samples), at * sizeof(ushort));

    /// <summary>Reads stored samples; safe from several threads at once.</summary>
    /// <param name="at">Index of the first sample in the file.</param>
    /// <param name="samples">Receives the samples.</param>
    public void Read(long at, Span<ushort> samples)
    {
        Span<byte> bytes = MemoryMarshal.AsBytes(samples);
        for (long from = at * sizeof(ushort); !bytes.IsEmpty; )
        {
            int read = RandomAccess.Read(_file, bytes, from);
            if (read == 0)
                throw new EndOfStreamException("The temporary file of decoded frames is shorter than what was stored.");
            bytes = bytes[read..];
            from += read;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();

    // The usual temporary folder is often held in memory, and saving memory is the point.
    private static string Folder()
    {
        const string largeFiles = "/var/tmp";
        bool isChosen = Environment.GetEnvironmentVariable("TMPDIR") is { Length: > 0 };
        return !isChosen && !OperatingSystem.IsWindows() && Directory.Exists(largeFiles)
            ? largeFiles
            : Path.GetTempPath();
    }
}
