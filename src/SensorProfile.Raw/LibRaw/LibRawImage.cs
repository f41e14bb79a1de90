using System.Runtime.InteropServices;
using System.Text;

namespace SensorProfile.Raw.LibRaw;

/// <summary>A file that LibRaw has opened, in this process.</summary>
internal sealed class LibRawImage : IDisposable
{
    // libraw_iparams_t: guard[4], then make, model, software and two more names of 64 bytes, two numbers, the version
    private const int ModelOffset = 4 + 64,
        NameLength = 64,
        DngVersionOffset = 4 + (5 * 64) + 8;

    // libraw_imgother_t: iso_speed, shutter, aperture, focal_len (32-bit), timestamp (time_t)
    private const int ShutterOffset = 4,
        TimeOffset = 16;

    private const int ColoursOfPixel = 4;
    private readonly LibRawLibrary library;
    private readonly IntPtr data;

    private LibRawImage(LibRawLibrary library, IntPtr data) => (this.library, this.data) = (library, data);

    /// <summary>Columns that see light.</summary>
    public int Width => Size(3);

    /// <summary>Rows that see light.</summary>
    public int Height => Size(2);

    /// <summary>Name of the camera.</summary>
    public string Model => Name(library.Function<LibRawLibrary.PartOf>("libraw_get_iparams")(data) + ModelOffset);

    /// <summary>Whether it is a DNG, which this program reads by itself.</summary>
    public bool IsDng =>
        Marshal.ReadInt32(library.Function<LibRawLibrary.PartOf>("libraw_get_iparams")(data) + DngVersionOffset) != 0;

    /// <summary>ISO; 0 when unknown.</summary>
    public float Iso => Real(Other);

    /// <summary>Exposure, s; 0 when unknown.</summary>
    public float ExposureSeconds => Real(Other + ShutterOffset);

    /// <summary>The camera's clock as seconds since 1970 where this process's zone is UTC; 0 when unknown.</summary>
    public long Time => Marshal.ReadInt64(Other + TimeOffset);

    private IntPtr Other => library.Function<LibRawLibrary.PartOf>("libraw_get_imgother")(data);

    /// <summary>Opens a file; samples are not decoded yet.</summary>
    /// <exception cref="InvalidDataException">LibRaw cannot read it; says why.</exception>
    public static LibRawImage Open(LibRawLibrary library, string path)
    {
        IntPtr data = library.Function<LibRawLibrary.Initialise>("libraw_init")(0);
        if (data == IntPtr.Zero)
            throw new InvalidDataException("LibRaw cannot be started");
        var image = new LibRawImage(library, data);
        try
        {
            image.Check(library.Function<LibRawLibrary.OpenFile>("libraw_open_file")(data, path));
            // where a structure lies otherwise than expected, sizes disagree
            if (
                image.Size(0) != image.Entry("libraw_get_raw_height")
                || image.Size(1) != image.Entry("libraw_get_raw_width")
            )
                throw new InvalidDataException("this build of LibRaw lays its data out in another way");
            return image;
        }
        catch
        {
            image.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Four letters of the filter from the top left of what sees light; empty for none, null for a pattern beyond 2 ×
    /// 2.
    /// </summary>
    public string? ColourFilter()
    {
        const string letters = "RGBG";
        const int period = 8; // patterns of 6 × 6 or 16 × 2 differ within it
        var colour = library.Function<LibRawLibrary.ColourAt>("libraw_COLOR");
        int first = colour(data, 0, 0);
        var seen = new HashSet<int>();
        for (int row = 0; row < period; row++)
        for (int column = 0; column < period; column++)
        {
            int here = colour(data, row, column);
            seen.Add(here);
            if (here is < 0 or > 3 || letters[here] != letters[colour(data, row & 1, column & 1)])
                return here == 6 && first == 6 ? "" : null; // 6: no filter
        }
        return seen.Count == 1
            ? ""
            : string.Concat(
                new[] { (0, 0), (0, 1), (1, 0), (1, 1) }.Select(p => letters[colour(data, p.Item1, p.Item2)])
            );
    }

    /// <summary>Decodes the samples and hands out the rows that see light, codes as LibRaw has them.</summary>
    /// <exception cref="InvalidDataException">LibRaw cannot decode it; says why.</exception>
    public void Decode(Action<ushort[]> row)
    {
        Check(library.Function<LibRawLibrary.Step>("libraw_unpack")(data));
        Check(library.Function<LibRawLibrary.Step>("libraw_raw2image")(data));
        IntPtr image = Marshal.ReadIntPtr(data);
        if (image == IntPtr.Zero || Size(6) != Height || Size(7) != Width)
            throw new InvalidDataException("LibRaw gives an image of another size than it announced");
        var colour = library.Function<LibRawLibrary.ColourAt>("libraw_COLOR");
        var quads = new short[Width * ColoursOfPixel];
        var samples = new ushort[Width];
        for (int y = 0; y < Height; y++)
        {
            Marshal.Copy(image + (nint)((long)y * Width * ColoursOfPixel * sizeof(ushort)), quads, 0, quads.Length);
            int even = Channel(colour(data, y, 0)),
                odd = Channel(colour(data, y, 1));
            for (int x = 0; x < samples.Length; x++)
                samples[x] = (ushort)quads[(x * ColoursOfPixel) + ((x & 1) == 0 ? even : odd)];
            row(samples);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => library.Function<LibRawLibrary.Close>("libraw_close")(data);

    private static int Channel(int colour) => colour is >= 0 and < ColoursOfPixel ? colour : 0;

    private static float Real(IntPtr at) => BitConverter.Int32BitsToSingle(Marshal.ReadInt32(at));

    private static string Name(IntPtr at)
    {
        var bytes = new byte[NameLength];
        Marshal.Copy(at, bytes, 0, NameLength);
        int end = Array.IndexOf(bytes, (byte)0);
        return Encoding.Latin1.GetString(bytes, 0, end < 0 ? NameLength : end).Trim();
    }

    /// <summary>
    /// One of raw height, raw width, height, width, top margin, left margin, image height, image width.
    /// </summary>
    private int Size(int index) => (ushort)Marshal.ReadInt16(data + IntPtr.Size + (index * sizeof(ushort)));

    private int Entry(string name) => library.Function<LibRawLibrary.Step>(name)(data);

    private void Check(int error)
    {
        if (error != 0)
            throw new InvalidDataException(
                Marshal.PtrToStringUTF8(library.Function<LibRawLibrary.TextOf>("libraw_strerror")(error))
                    ?? $"error {error}"
            );
    }
}
