using System.Buffers;
using Microsoft.Win32.SafeHandles;
using SensorProfile.Fits.Bytes;
using SensorProfile.Fits.Headers;

namespace SensorProfile.Fits;

/// <summary>Writes FITS files with DATASUM and CHECKSUM. The same image and cards always give the same bytes.</summary>
public static class FitsWriter
{
    private const int StepBytes = 1 << 18;

    /// <summary>Writes a file with one image.</summary>
    /// <inheritdoc cref="Write(string, IReadOnlyList{FitsImage}, bool, bool)"/>
    public static void Write(string path, FitsImage image, bool overwrite = false, bool durable = true) =>
        Write(path, [image], overwrite, durable);

    /// <summary>Writes a file: the first image is the primary HDU, each further one an IMAGE extension.</summary>
    /// <remarks>
    /// The file appears under its name only when complete: it is written under a temporary name in the same folder and
    /// renamed.
    /// </remarks>
    /// <param name="path">Name of the file; its folder must exist.</param>
    /// <param name="images">At least one image.</param>
    /// <param name="overwrite">Whether a file of that name may be replaced.</param>
    /// <param name="durable">Whether to wait for the bytes to be on the disk. Without it a power cut can lose files
    /// written shortly before.</param>
    /// <exception cref="ArgumentException">There is no image.</exception>
    /// <exception cref="IOException">The disk is full, the folder cannot be written, or the name is taken; nothing is
    /// left behind.</exception>
    /// <exception cref="UnauthorizedAccessException">Permission to write to the folder is missing.</exception>
    public static void Write(string path, IReadOnlyList<FitsImage> images, bool overwrite = false, bool durable = true)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(images);
        if (images.Count == 0)
            throw new ArgumentException("A FITS file has at least one HDU.", nameof(images));
        long[] headers =
        [
            .. images.Select((image, hdu) => HeaderWriter.Header(image, hdu, images.Count > 1, 0).LongLength),
        ];
        long bytes = headers.Sum() + images.Sum(image => Padded(image.Bytes.Length));
        NewFitsFile.Write(path, bytes, overwrite, durable, handle =>
        {
            long at = 0;
            for (int hdu = 0; hdu < images.Count; hdu++)
            {
                uint dataSum = WriteData(handle, at + headers[hdu], images[hdu]);
                RandomAccess.Write(handle, HeaderWriter.Header(images[hdu], hdu, images.Count > 1, dataSum), at);
                at += headers[hdu] + Padded(images[hdu].Bytes.Length);
            }
        });
    }

    private static long Padded(long bytes) =>
        (bytes + HeaderReader.BlockBytes - 1) / HeaderReader.BlockBytes * HeaderReader.BlockBytes;

    /// <summary>Writes a data unit with its padding and returns its sum.</summary>
    private static uint WriteData(SafeFileHandle handle, long at, FitsImage image)
    {
        ReadOnlySpan<byte> numbers = image.Bytes;
        byte[] buffer = ArrayPool<byte>.Shared.Rent(StepBytes);
        uint sum = 0;
        for (int done = 0; done < numbers.Length; done += StepBytes)
        {
            Span<byte> step = buffer.AsSpan(0, Math.Min(StepBytes, numbers.Length - done));
            ByteOrder.ToBigEndian(
                numbers.Slice(done, step.Length),
                step,
                Math.Abs(image.Bitpix) / 8,
                image.Zero is not null
            );
            sum = Checksum.Add(sum, step);
            RandomAccess.Write(handle, step, at + done);
        }

        ArrayPool<byte>.Shared.Return(buffer);
        Span<byte> padding = stackalloc byte[HeaderReader.BlockBytes];
        padding.Clear();
        RandomAccess.Write(handle, padding[..(int)(Padded(numbers.Length) - numbers.Length)], at + numbers.Length);
        return sum;
    }
}
