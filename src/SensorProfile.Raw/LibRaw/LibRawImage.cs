using System.Runtime.InteropServices;
using System.Text;

namespace SensorProfile.Raw.LibRaw;

/// <summary>A file opened by LibRaw in this process.</summary>
internal sealed class LibRawImage : IDisposable
{
    // libraw_iparams_t: guard[4]; then make, model, software and two more names of 64 bytes each; then numbers: maker
    // index, exposures, DNG version, whether the colours are stacked, colours, filter pattern
    private const int ModelOffset = 4 + 64,
        NameLength = 64,
        NumbersOffset = 4 + (5 * 64),
        ExposuresOffset = NumbersOffset + 4,
        DngVersionOffset = NumbersOffset + 8,
        LayersOffset = NumbersOffset + 12,
        ColoursOffset = NumbersOffset + 16,
        FilterOffset = NumbersOffset + 20;

    // libraw_imgother_t: iso_speed, shutter, aperture, focal_len (32-bit), timestamp (time_t)
    private const int ShutterOffset = 4,
        TimeOffset = 16;

    private const int ColoursOfPixel = 4;
    private readonly LibRawLibrary library;
    private readonly IntPtr data;
    private readonly LibRawLibrary.DataProblem onDamage; // kept alive: the library calls it
    private LibRawStored? stored;
    private int? damagedAt;
    private bool isDecoded;

    private LibRawImage(LibRawLibrary library, IntPtr data)
    {
        (this.library, this.data) = (library, data);
        onDamage = (_, _, offset) => damagedAt ??= offset;
        library.Function<LibRawLibrary.OnDataProblem>("libraw_set_dataerror_handler")(data, onDamage, IntPtr.Zero);
    }

    /// <summary>Columns of exposed samples.</summary>
    public int Width => Size(3);

    /// <summary>Rows of exposed samples.</summary>
    public int Height => Size(2);

    /// <summary>Columns of all stored samples; after decoding, those that are available.</summary>
    public int SensorWidth => HasBorder ? Size(1) : Width;

    /// <summary>Rows of all stored samples; after decoding, those that are available.</summary>
    public int SensorHeight => HasBorder ? Size(0) : Height;

    /// <summary>Rows above the exposed ones.</summary>
    public int Top => HasBorder ? Size(4) : 0;

    /// <summary>Columns to the left of the exposed ones.</summary>
    public int Left => HasBorder ? Size(5) : 0;

    /// <summary>Name of the camera.</summary>
    public string Model => Name(Parameters + ModelOffset);

    /// <summary>Whether it is a DNG, which this program reads itself.</summary>
    public bool IsDng => Marshal.ReadInt32(Parameters + DngVersionOffset) != 0;

    /// <summary>Number of exposures in the file; the first one is decoded.</summary>
    public int Exposures => Math.Max(1, Marshal.ReadInt32(Parameters + ExposuresOffset));

    /// <summary>
    /// Colours per pixel: 1 behind a filter or without colours, 3 when the camera computed them or the sensor records
    /// them in layers.
    /// </summary>
    public int ColoursOfAPixel =>
        Marshal.ReadInt32(Parameters + FilterOffset) != 0 && Marshal.ReadInt32(Parameters + LayersOffset) == 0
            ? 1
            : Marshal.ReadInt32(Parameters + ColoursOffset);

    /// <summary>ISO; 0 when unknown.</summary>
    public float Iso => Real(Other);

    /// <summary>Exposure, s; 0 when unknown.</summary>
    public float ExposureSeconds => Real(Other + ShutterOffset);

    /// <summary>
    /// Time of the camera's clock, seconds since 1970 (with this process's zone set to UTC); 0 when unknown.
    /// </summary>
    public long Time => Marshal.ReadInt64(Other + TimeOffset);

    private IntPtr Parameters => library.Function<LibRawLibrary.PartOf>("libraw_get_iparams")(data);

    private IntPtr Other => library.Function<LibRawLibrary.PartOf>("libraw_get_imgother")(data);

    /// <summary>Opens a file without decoding its samples.</summary>
    /// <exception cref="LibRawFailure">LibRaw cannot read it; gives the reason.</exception>
    public static LibRawImage Open(LibRawLibrary library, string path)
    {
        IntPtr data = library.Function<LibRawLibrary.Initialise>("libraw_init")(0);
        if (data == IntPtr.Zero)
            throw new LibRawFailure("LibRaw cannot be started");
        var image = new LibRawImage(library, data);
        try
        {
            image.Check(library.Function<LibRawLibrary.OpenFile>("libraw_open_file")(data, path));
            // if a structure is laid out otherwise than expected, sizes disagree
            if (
                image.Size(0) != image.Entry("libraw_get_raw_height")
                || image.Size(1) != image.Entry("libraw_get_raw_width")
            )
                throw new LibRawFailure("this build of LibRaw lays its data out in another way");
            return image;
        }
        catch
        {
            image.Dispose();
            throw;
        }
    }

    /// <summary>
    /// Four letters of the filter from the top left of the exposed area; empty for none, null for a pattern larger than
    /// 2 × 2.
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

    /// <summary>Decodes the samples.</summary>
    /// <remarks>
    /// After damage LibRaw continues with the samples it has, and reports the damage only through a callback.
    /// </remarks>
    /// <exception cref="LibRawFailure">LibRaw cannot decode it; gives the reason.</exception>
    public void Decode()
    {
        int error = library.Function<LibRawLibrary.Step>("libraw_unpack")(data);
        if (damagedAt is { } at)
            throw new LibRawFailure(
                at < 0
                    ? "the file ends before its samples do"
                    : FormattableString.Invariant($"its samples are damaged at byte {at} or before"),
                LibRawCause.Damaged
            );
        Check(error);
        Check(library.Function<LibRawLibrary.Step>("libraw_raw2image")(data));
        if (Marshal.ReadIntPtr(data) == IntPtr.Zero || Size(6) != Height || Size(7) != Width)
            throw new LibRawFailure("LibRaw gives an image of another size than it announced");
        RefuseZeros();
        IntPtr sizes = data + IntPtr.Size;
        stored = HasMargins ? LibRawStored.Find(data, sizes, Parameters) : null;
        for (int row = 0; stored is not null && row < Height; row++)
            if (!stored.Row(Size(4) + row).AsSpan(Size(5), Width).SequenceEqual(Visible(row)))
                stored = null; // whatever it is, the samples are not from there
        isDecoded = true;
    }

    /// <summary>
    /// Passes on all rows of <see cref="SensorHeight"/> × <see cref="SensorWidth"/> samples, with LibRaw's codes.
    /// </summary>
    public void Rows(Action<ushort[]> row)
    {
        for (int y = 0; y < SensorHeight; y++)
            row(stored?.Row(y) ?? Visible(y));
    }

    /// <inheritdoc/>
    public void Dispose() => library.Function<LibRawLibrary.Close>("libraw_close")(data);

    private bool HasBorder => HasMargins && (stored is not null || !isDecoded);

    private bool HasMargins =>
        Size(0) >= Size(4) + Height && Size(1) >= Size(5) + Width && (Size(0) > Height || Size(1) > Width);

    /// <summary>
    /// When LibRaw fails on a compressed stream it may return nothing but zeros. Any other constant code can be a
    /// saturated flat.
    /// </summary>
    private void RefuseZeros()
    {
        for (int row = 0; row < Height; row++)
            if (Visible(row).AsSpan().ContainsAnyExcept((ushort)0))
                return;
        throw new LibRawFailure("it gives 0 for every pixel, which no sensor does", LibRawCause.Damaged);
    }

    private ushort[] Visible(int row)
    {
        var colour = library.Function<LibRawLibrary.ColourAt>("libraw_COLOR");
        var quads = new short[Width * ColoursOfPixel];
        var samples = new ushort[Width];
        Marshal.Copy(
            Marshal.ReadIntPtr(data) + (nint)((long)row * Width * ColoursOfPixel * sizeof(ushort)),
            quads,
            0,
            quads.Length
        );
        int even = Channel(colour(data, row, 0)),
            odd = Channel(colour(data, row, 1));
        for (int x = 0; x < samples.Length; x++)
            samples[x] = (ushort)quads[(x * ColoursOfPixel) + ((x & 1) == 0 ? even : odd)];
        return samples;
    }

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
        const int unsupported = -2,
            dataError = -100008,
            inputError = -100009;
        if (error == 0)
            return;
        string words = Marshal.PtrToStringUTF8(library.Function<LibRawLibrary.TextOf>("libraw_strerror")(error))
            ?? $"error {error}";
        throw new LibRawFailure(
            words,
            error switch
            {
                unsupported => LibRawCause.Unknown,
                dataError or inputError => LibRawCause.Damaged,
                _ => LibRawCause.Other,
            }
        );
    }
}
