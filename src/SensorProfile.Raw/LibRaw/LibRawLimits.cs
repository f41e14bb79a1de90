using System.Globalization;
using System.Runtime.InteropServices;

namespace SensorProfile.Raw.LibRaw;

/// <summary>What the child process may use up.</summary>
/// <param name="Bytes">Memory beyond what the program itself takes.</param>
/// <param name="Seconds">Time of a processor.</param>
internal sealed record LibRawLimits(long Bytes, int Seconds)
{
    private const int Processor = 0, // RLIMIT_CPU and RLIMIT_AS of Linux on x86-64 and ARM64
        AddressSpace = 9;
    private const string Memory = "/proc/self/statm"; // its first number: pages of address space

    /// <summary>100 million pixels take 8 bytes each, and 2 more before, in a few seconds.</summary>
    public static LibRawLimits Ordinary { get; } = new(3L << 30, 60);

    /// <summary>The limits as arguments of the child.</summary>
    public string[] Arguments =>
        [Bytes.ToString(CultureInfo.InvariantCulture), Seconds.ToString(CultureInfo.InvariantCulture)];

    /// <summary>Reads them back; the ordinary ones where they are none.</summary>
    public static LibRawLimits Of(string? bytes, string? seconds) =>
        long.TryParse(bytes, NumberStyles.None, CultureInfo.InvariantCulture, out long most)
        && int.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out int time)
            ? new LibRawLimits(most, time)
            : Ordinary;

    /// <summary>
    /// Has the system hold this process to the limits from now on, where it can: an allocation beyond them fails, and
    /// a process that works longer is ended. It needs nobody to watch, and no allocation is too fast for it.
    /// </summary>
    /// <remarks>Linux. Elsewhere, and for time in the first place, <see cref="LibRawProcess"/> watches.</remarks>
    public void Bind()
    {
        if (!OperatingSystem.IsLinux() || !Environment.Is64BitProcess)
            return;
        const int margin = 2; // the watching process ends it first, and can say why
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
        _ = SetLimit(what, in limit); // a stricter limit of the user's stands
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
