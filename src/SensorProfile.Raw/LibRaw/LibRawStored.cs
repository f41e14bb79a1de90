using System.Runtime.InteropServices;

namespace SensorProfile.Raw.LibRaw;

/// <summary>All samples of a file decoded by LibRaw, including those around the exposed area.</summary>
/// <remarks>
/// The C interface has no function for them. In all supported versions the structure <c>libraw_rawdata_t</c> holds the
/// pointers to the samples (<c>raw_alloc</c>, <c>raw_image</c>, five for other layouts, two for one maker's black
/// level) directly followed by a copy of <c>libraw_iparams_t</c>. Its position differs between versions, so it is
/// located by that copy, and the samples it points to are trusted only if they agree, one by one, with those that the C
/// interface gives for the exposed area (<see cref="LibRawImage.Decode"/>).
/// </remarks>
internal sealed class LibRawStored
{
    // guard, make, model, software and two more names of 64 bytes, three numbers: too much for a coincidence
    private const int ComparedBytes = 4 + (5 * 64) + 12;

    // libraw_data_t is longer in all supported versions: it has two curves of 128 KiB and four tables of 16 KiB
    private const int SearchedBytes = 280 << 10;
    private const int PointersBefore = 9; // raw_alloc, raw_image, then those of other layouts
    private const int OtherLayouts = 5;
    private const int PitchOffset = 8 * sizeof(ushort); // libraw_image_sizes_t: eight 16-bit sizes, then bytes a row

    private readonly IntPtr samples;
    private readonly int width;

    private LibRawStored(IntPtr samples, int width) => (this.samples, this.width) = (samples, width);

    /// <summary>Finds the samples; null when their layout differs or their position cannot be established.</summary>
    /// <param name="data">The structure <c>libraw_data_t</c>.</param>
    /// <param name="sizes">Its <c>libraw_image_sizes_t</c>.</param>
    /// <param name="parameters">Its <c>libraw_iparams_t</c>.</param>
    public static LibRawStored? Find(IntPtr data, IntPtr sizes, IntPtr parameters)
    {
        int width = (ushort)Marshal.ReadInt16(sizes + sizeof(ushort));
        int pitch = Marshal.ReadInt32(sizes + PitchOffset);
        if (pitch != width * sizeof(ushort))
            return null;
        var bytes = new byte[SearchedBytes];
        Marshal.Copy(data, bytes, 0, bytes.Length);
        int first = (int)(parameters - data);
        ReadOnlySpan<byte> wanted = bytes.AsSpan(first, ComparedBytes);
        for (int at = first + ComparedBytes; at + ComparedBytes <= bytes.Length; at += IntPtr.Size)
        {
            if (!bytes.AsSpan(at, ComparedBytes).SequenceEqual(wanted))
                continue;
            ReadOnlySpan<nint> pointers = MemoryMarshal.Cast<byte, nint>(
                bytes.AsSpan(at - (PointersBefore * IntPtr.Size), PointersBefore * IntPtr.Size)
            );
            bool isPlain = pointers[1] != 0 && pointers[0] == pointers[1];
            return isPlain && pointers.Slice(2, OtherLayouts).IndexOfAnyExcept((nint)0) < 0
                ? new LibRawStored(pointers[1], width)
                : null;
        }
        return null;
    }

    /// <summary>One row of all stored samples.</summary>
    public ushort[] Row(int row)
    {
        var samples = new short[width];
        Marshal.Copy(this.samples + (nint)((long)row * width * sizeof(ushort)), samples, 0, width);
        return MemoryMarshal.Cast<short, ushort>(samples).ToArray();
    }
}
