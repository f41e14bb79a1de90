using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Fits.Bytes;

/// <summary>A plain file on disk, read at given offsets, so that any number of threads can read at once.</summary>
internal sealed class FileByteSource : ByteSource
{
    private readonly SafeFileHandle? handle; // null for a path without bytes

    public FileByteSource(string path)
    {
        File = path;
        if (HoldsNothing(path))
            return;
        handle = System.IO.File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        Length = RandomAccess.GetLength(handle);
    }

    public override string File { get; }

    /// <summary>Length of the file, bytes.</summary>
    public long Length { get; }

    public override long MaximumLength => Length;

    public override long AvailableUpTo(long limit) => Math.Min(Length, limit);

    public override int Read(long offset, Span<byte> bytes)
    {
        int done = 0;
        while (handle is not null && done < bytes.Length)
        {
            int read = RandomAccess.Read(handle, bytes[done..], offset + done);
            if (read == 0)
                break;
            done += read;
        }

        return done;
    }

    public override void Dispose() => handle?.Dispose();

    /// <summary>
    /// Whether the path exists but has no length: an empty file, or a pipe or device, which might block for ever when
    /// opened or read.
    /// </summary>
    internal static bool HoldsNothing(string path)
    {
        var file = new FileInfo(path);
        if (file.LinkTarget is not null && file.ResolveLinkTarget(returnFinalTarget: true) is FileInfo target)
            file = target;
        return file.Exists && file.Length == 0;
    }
}
