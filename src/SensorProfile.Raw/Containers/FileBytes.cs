using System.Globalization;
using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Raw.Containers;

/// <summary>
/// A file on disk. Its handle can be released between reads, so that hundreds of files can be read in turn.
/// </summary>
internal sealed class FileBytes : RawBytes
{
    private readonly Lock gate = new();
    private SafeFileHandle? handle;
    private bool disposed;

    public FileBytes(string path)
    {
        File = path;
        handle = OpenHandle();
        Length = RandomAccess.GetLength(handle);
    }

    public override string File { get; }

    public override long Length { get; }

    public override int Read(long offset, Span<byte> bytes)
    {
        SafeFileHandle open = Handle();
        int done = 0;
        while (done < bytes.Length)
        {
            int read = RandomAccess.Read(open, bytes[done..], offset + done);
            if (read == 0)
                break;
            done += read;
        }
        return done;
    }

    public override void Park()
    {
        lock (gate)
        {
            handle?.Dispose();
            handle = null;
        }
    }

    public override void Dispose()
    {
        disposed = true;
        base.Dispose();
    }

    private SafeFileHandle Handle()
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(disposed, typeof(RawFile));
            if (handle is not null)
                return handle;
            SafeFileHandle again = OpenHandle();
            long length = RandomAccess.GetLength(again);
            if (length == Length)
                return handle = again;
            again.Dispose();
            throw new RawFormatException(
                RawRefusal.Damaged,
                new RawLocation(File),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"the file had {Length} bytes when it was opened and has {length} now."
                ),
                "Read it again when nothing writes to it any more."
            );
        }
    }

    private SafeFileHandle OpenHandle() =>
        System.IO.File.OpenHandle(File, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
}
