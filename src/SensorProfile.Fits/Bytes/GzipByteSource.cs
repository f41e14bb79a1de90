using System.IO.Compression;
using Microsoft.Win32.SafeHandles;

namespace SensorProfile.Fits.Bytes;

/// <summary>
/// A gzipped file, unpacked once, forward, and only as far as requested: the sizes declared by the headers bound the
/// work, not the size of the archive.
/// </summary>
/// <remarks>
/// The first mebibyte stays in memory; beyond that the unpacked bytes go to a temporary file that disappears with this
/// object.
/// </remarks>
internal sealed class GzipByteSource : ByteSource
{
    private const int BytesInMemory = 1 << 20;
    private const int StepBytes = 1 << 16;
    private const long LargestExpansion = 1032; // deflate codes at most 258 bytes in 2 bits

    private readonly Lock gate = new();
    private readonly ByteSource packed;
    private readonly GZipStream unpacker;
    private byte[] memory = new byte[StepBytes];
    private byte[] step = [];
    private SafeFileHandle? spool;
    private long unpackedBytes;
    private bool ended;
    private FitsFormatException? damage;

    public GzipByteSource(ByteSource packed)
    {
        this.packed = packed;
        unpacker = new GZipStream(new SourceStream(packed), CompressionMode.Decompress);
    }

    public override string File => packed.File;

    public override long MaximumLength =>
        PackedLength > long.MaxValue / LargestExpansion ? long.MaxValue : PackedLength * LargestExpansion;

    public override FitsFormatException? Damage => damage;

    /// <summary>Length of the archive itself, bytes.</summary>
    public long PackedLength => packed.MaximumLength;

    public override long AvailableUpTo(long limit)
    {
        lock (gate)
        {
            UnpackUpTo(limit);
            return Math.Min(unpackedBytes, limit);
        }
    }

    public override int Read(long offset, Span<byte> bytes)
    {
        int length = (int)Math.Clamp(AvailableUpTo(offset + bytes.Length) - offset, 0, bytes.Length);
        bytes = bytes[..length];
        if (spool is { } file)
            return ReadFully(file, bytes, offset);
        lock (gate)
        {
            if (spool is not null)
                return ReadFully(spool, bytes, offset);
            memory.AsSpan((int)offset, length).CopyTo(bytes);
            return length;
        }
    }

    public override void Dispose()
    {
        unpacker.Dispose();
        packed.Dispose();
        spool?.Dispose();
    }

    private void UnpackUpTo(long limit)
    {
        while (unpackedBytes < limit && !ended)
        {
            try
            {
                int wanted = (int)Math.Min(StepBytes, limit - unpackedBytes);
                ended = (spool is null ? UnpackToMemory(wanted) : UnpackToSpool(wanted)) == 0;
            }
            catch (InvalidDataException e)
            {
                ended = true;
                damage = new FitsFormatException(
                    new FitsLocation(File),
                    $"the gzip archive is damaged after {unpackedBytes} unpacked bytes.",
                    "Copy the file again from its origin, or leave it out.",
                    e
                );
            }
        }
    }

    private int UnpackToMemory(int wanted)
    {
        if (unpackedBytes + wanted > BytesInMemory)
        {
            StartSpool();
            return UnpackToSpool(wanted);
        }

        if (unpackedBytes + wanted > memory.Length)
            Array.Resize(ref memory, Math.Min(BytesInMemory, memory.Length * 2));
        int read = unpacker.Read(memory, (int)unpackedBytes, wanted);
        unpackedBytes += read;
        return read;
    }

    private int UnpackToSpool(int wanted)
    {
        int read = unpacker.Read(step, 0, wanted);
        RandomAccess.Write(spool!, step.AsSpan(0, read), unpackedBytes);
        unpackedBytes += read;
        return read;
    }

    private void StartSpool()
    {
        step = new byte[StepBytes];
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        SafeFileHandle file = System.IO.File.OpenHandle(
            path,
            FileMode.CreateNew,
            FileAccess.ReadWrite,
            FileShare.None,
            FileOptions.DeleteOnClose
        );
        RandomAccess.Write(file, memory.AsSpan(0, (int)unpackedBytes), 0);
        spool = file;
        memory = [];
    }

    private static int ReadFully(SafeFileHandle file, Span<byte> bytes, long offset)
    {
        int done = 0;
        while (done < bytes.Length && RandomAccess.Read(file, bytes[done..], offset + done) is > 0 and var read)
            done += read;
        return done;
    }

    /// <summary>Reads the archive forward for the unpacker.</summary>
    private sealed class SourceStream(ByteSource source) : Stream
    {
        private long position;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => source.MaximumLength;

        public override long Position
        {
            get => position;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override int Read(Span<byte> buffer)
        {
            int read = source.Read(position, buffer);
            position += read;
            return read;
        }

        public override void Flush() { }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
