using System.Runtime.InteropServices;

namespace SensorProfile.Raw.LibRaw;

/// <summary>The few entry points of the system's LibRaw that this program uses.</summary>
/// <remarks>
/// Only functions of its C interface, and the beginnings of three structures that are the same in all supported
/// versions: <c>libraw_data_t</c> begins with the pointer to the image (four 16-bit numbers per pixel) and the sizes.
/// </remarks>
internal sealed class LibRawLibrary
{
    /// <summary>Environment variable with the path of the library, for when it is not found.</summary>
    public const string PathVariable = "SENSORPROFILE_LIBRAW";

    private const int Earliest = 20,
        Latest = 22; // 0.20 to 0.22

    private readonly IntPtr library;

    private LibRawLibrary(IntPtr library) => this.library = library;

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate IntPtr Initialise(uint flags);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate int OpenFile(IntPtr data, [MarshalAs(UnmanagedType.LPUTF8Str)] string path);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate int Step(IntPtr data);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate void Close(IntPtr data);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate int ColourAt(IntPtr data, int row, int column);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate IntPtr PartOf(IntPtr data);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate IntPtr TextOf(int error);

    /// <summary>Callback for damage: the file, and the position; below 0 at the end of the file.</summary>
    /// <remarks>Later versions give a 64-bit position, of which the low half is used.</remarks>
    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate void DataProblem(IntPtr context, IntPtr file, int offset);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate void OnDataProblem(IntPtr data, DataProblem handler, IntPtr context);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate int Number();

    /// <summary>The system's library; null with the reason when there is no usable one.</summary>
    public static (LibRawLibrary? Library, string? Problem) Load() => Load(Names());

    /// <summary>Loads the first of several files that can be loaded.</summary>
    internal static (LibRawLibrary? Library, string? Problem) Load(IEnumerable<string> names)
    {
        foreach (string name in names)
        {
            if (!NativeLibrary.TryLoad(name, out IntPtr handle))
                continue;
            var found = new LibRawLibrary(handle);
            int version = found.Function<Number>("libraw_versionNumber")();
            (int major, int minor) = (version >> 16, version >> 8 & 0xFF);
            if (major == 0 && minor is >= Earliest and <= Latest)
                return (found, null);
            return (null, $"LibRaw {major}.{minor} is installed; versions 0.{Earliest} to 0.{Latest} are understood");
        }
        return (null, "LibRaw is not installed");
    }

    /// <summary>One function of the library.</summary>
    public T Function<T>(string name)
        where T : Delegate => Marshal.GetDelegateForFunctionPointer<T>(NativeLibrary.GetExport(library, name));

    private static IEnumerable<string> Names()
    {
        if (Environment.GetEnvironmentVariable(PathVariable) is { Length: > 0 } path)
            return [path];
        if (OperatingSystem.IsWindows())
            return ["libraw.dll"];
        return OperatingSystem.IsMacOS()
            ? ["libraw.dylib", "/opt/homebrew/lib/libraw.dylib", "/usr/local/lib/libraw.dylib"]
            : ["libraw.so.23", "libraw.so.22", "libraw.so.20", "libraw.so"];
    }
}
