using SensorProfile.Raw.Containers;
using static System.FormattableString;

namespace SensorProfile.Raw.Mosaics;

/// <summary>The bytes of one strip or tile in order, through a window of a few kilobytes.</summary>
internal sealed class SegmentBytes(TiffDirectory directory, Segment segment)
{
    private const int WindowBytes = 16 * 1024;

    private byte[] window = [];
    private int at;
    private int end;
    private long next; // offset within the segment of the byte after the window

    /// <summary>The strip or tile.</summary>
    public Segment Segment { get; } = segment;

    /// <summary>Offset of the next byte within the segment.</summary>
    public long Position => next - (end - at);

    /// <summary>The rest of the window; empty only at the end of the segment, after <see cref="Fill"/>.</summary>
    public ReadOnlySpan<byte> Window => window.AsSpan(at, end - at);

    /// <summary>Moves to an offset within the segment.</summary>
    public void MoveTo(long position)
    {
        long back = next - position;
        if (back >= 0 && back <= end)
        {
            at = end - (int)back;
            return;
        }
        (at, end, next) = (0, 0, position);
    }

    /// <summary>Skips bytes of the window.</summary>
    public void Advance(int bytes) => at += bytes;

    /// <summary>Reads until the window holds the given number of bytes, or all that are left.</summary>
    public void Fill(int wanted = WindowBytes)
    {
        int kept = end - at;
        if (kept >= wanted || next >= Segment.Bytes)
            return;
        int room = Math.Max(WindowBytes, wanted);
        if (window.Length < room)
        {
            var larger = new byte[Math.Min(room, Math.Max(kept + Segment.Bytes - next, 1))];
            window.AsSpan(at, kept).CopyTo(larger);
            window = larger;
        }
        else
            window.AsSpan(at, kept).CopyTo(window);
        int count = (int)Math.Min(window.Length - kept, Segment.Bytes - next);
        int read = directory.Source.Read(Segment.Offset + next, window.AsSpan(kept, count));
        (at, end) = (0, kept + read);
        next += read;
        if (read < count)
            throw Damaged("the file ends within it.");
    }

    /// <summary>Returns the next bytes and skips them.</summary>
    /// <exception cref="RawFormatException">The segment ends too early.</exception>
    public ReadOnlySpan<byte> Take(int bytes)
    {
        if (end - at < bytes)
            Fill(bytes);
        if (end - at < bytes)
            throw Damaged(Invariant($"{bytes} more bytes were expected, but {end - at} are left of {Segment.Bytes}."));
        ReadOnlySpan<byte> taken = window.AsSpan(at, bytes);
        at += bytes;
        return taken;
    }

    /// <summary>Releases the window; the next read fills it again.</summary>
    public void Park()
    {
        long position = Position;
        (window, at, end, next) = ([], 0, 0, position);
    }

    /// <summary>Makes an exception for damage at the next byte.</summary>
    public RawFormatException Damaged(string problem, Exception? cause = null) =>
        Refuse(RawRefusal.Damaged, problem, TiffDirectory.Repair, cause);

    /// <summary>Makes a refusal at the next byte.</summary>
    public RawFormatException Refuse(RawRefusal refusal, string problem, string remedy, Exception? cause = null) =>
        new(
            refusal,
            new RawLocation(directory.Source.File, directory.Name, null, Segment.Name, Segment.Offset + Position),
            problem,
            remedy,
            cause
        );
}
