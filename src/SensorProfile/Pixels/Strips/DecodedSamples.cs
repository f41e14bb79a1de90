using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Pixels.Strips;

/// <summary>Decoded frames in one temporary file, which is gone when the work ends, however it ends.</summary>
/// <remarks>
/// A measurement walks the frames about ten times, several strips at once, and compressed samples can only be decoded
/// from their start: each frame is decoded once and its rows lie here, two bytes a sample. In memory 60 frames of 24
/// million pixels would take 2.9 GB.
/// </remarks>
internal sealed class DecodedSamples : IDisposable
{
    private readonly SafeFileHandle _file;

    private DecodedSamples(SafeFileHandle file) => _file = file;

    /// <summary>Room for so many samples; null when the disk has none.</summary>
    /// <param name="samples">Samples of all frames together.</param>
    /// <param name="folder">Where the file is made; the folder for large temporary files when not said.</param>
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
                File.Delete(path); // the open file lives on; nothing is left behind even when the process is killed
            return new DecodedSamples(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Stores samples.</summary>
    /// <param name="at">Index of the first.</param>
    /// <param name="samples">The samples.</param>
    public void Write(long at, ReadOnlySpan<ushort> samples) =>
        RandomAccess.Write(_file, MemoryMarshal.AsBytes(samples), at * sizeof(ushort));

    /// <summary>Reads samples that were stored; safe from several threads at once.</summary>
    /// <param name="at">Index of the first.</param>
    /// <param name="samples">Where they go.</param>
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

    // The usual temporary folder is often in memory, which is what must be spared.
    private static string Folder()
    {
        const string largeFiles = "/var/tmp";
        bool isChosen = Environment.GetEnvironmentVariable("TMPDIR") is { Length: > 0 };
        return !isChosen && !OperatingSystem.IsWindows() && Directory.Exists(largeFiles)
            ? largeFiles
            : Path.GetTempPath();
    }
}
