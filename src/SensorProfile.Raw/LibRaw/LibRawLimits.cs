using System.Globalization;
using System.Runtime.InteropServices;

namespace SensorProfile.Raw.LibRaw;

/// <summary>Resource limits of the child process.</summary>
/// <param name="Bytes">Memory beyond the program's own.</param>
/// <param name="Seconds">Processor time, s.</param>
/// <param name="Pixels">Largest image decoded, px.</param>
internal sealed record LibRawLimits(long Bytes, int Seconds, long Pixels = long.MaxValue)
{
    // even a frame without noise takes more than a quarter of a bit per pixel in camera files
    private const long PixelsPerByte = 32,
        BytesPerPixel = 10; // LibRaw's samples, plus four of two bytes
    private const long Own = 224L << 20; // allowance of the smallest file: under 400 MB with the program
    private const int StartSeconds = 4; // and a second more for each mebibyte

    private const int Processor = 0, // RLIMIT_CPU and RLIMIT_AS of Linux on x86-64 and ARM64
        AddressSpace = 9;
    private const string Memory = "/proc/self/statm"; // its first number: pages of address space

    /// <summary>Limits for 100 million pixels: 8 bytes each, plus 2 before, in a few seconds.</summary>
    public static LibRawLimits Ordinary { get; } = new(3L << 30, 60);

    /// <summary>Limits for a file of a given length: no image is unpacked that the file cannot hold.</summary>
    /// <param name="length">Length of the file, bytes.</param>
    public static LibRawLimits For(long length)
    {
        long pixels = length * PixelsPerByte;
        return new LibRawLimits(
            Math.Min(Ordinary.Bytes, Own + (pixels * BytesPerPixel)),
            (int)Math.Min(Ordinary.Seconds, StartSeconds + (length >> 20)),
            pixels
        );
    }

    /// <summary>The limits as arguments of the child.</summary>
    public string[] Arguments =>
        [.. new[] { Bytes, Seconds, Pixels }.Select(n => n.ToString(CultureInfo.InvariantCulture))];

    /// <summary>Reads the limits back; the ordinary ones when there are none.</summary>
    public static LibRawLimits Of(string? bytes, string? seconds, string? pixels) =>
        long.TryParse(bytes, NumberStyles.None, CultureInfo.InvariantCulture, out long most)
        && int.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out int time)
            ? new LibRawLimits(
                most,
                time,
                long.TryParse(pixels, NumberStyles.None, CultureInfo.InvariantCulture, out long size)
                    ? size
                    : long.MaxValue
            )
            : Ordinary;

    /// <summary>
    /// Makes the system enforce the limits on this process from now on, where it can: an allocation beyond them fails,
    /// and a process that works longer is ended. Nobody has to watch, and no allocation is too fast.
    /// </summary>
    /// <remarks>Linux only. Elsewhere, and first of all for time, <see cref="LibRawProcess"/> watches.</remarks>
    public void Bind()
    {
        if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess)
            return;
        const int margin = 2; // so that the watching process ends it first and can give the reason
        Set(Processor, (ulong)(Environment.CpuUsage.TotalTime.TotalSeconds + Seconds + margin));
        if (AddressSpaceBytes() is { } used)
            Set(AddressSpace, used + (ulong)Bytes);
    }

    private static ulong? AddressSpaceBytes()
    {
        try
        {
            return ulong.TryParse(
                File.ReadAllText(Memory).Split(' ')[0],
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out ulong pages
            )
                ? pages * (ulong)Environment.SystemPageSize
                : null;
        }
        catch (Exception hidden) when (hidden is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static void Set(int what, ulong most)
    {
        var limit = new Limit { Soft = most, Hard = most };
        _ = SetLimit(what, in limit); // a stricter limit set by the user stays
    }

    [DllImport("libc", EntryPoint = "setrlimit"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetLimit(int what, in Limit limit);

    [StructLayout(LayoutKind.Sequential)]
    private struct Limit
    {
        public ulong Soft;
        public ulong Hard;
    }
}
