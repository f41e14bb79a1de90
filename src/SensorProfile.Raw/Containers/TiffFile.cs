using System.Diagnostics.CodeAnalysis;
using static System.FormattableString;

namespace SensorProfile.Raw.Containers;

/// <summary>
/// All directories of a TIFF file: the chain from the header, their sub-directories and the Exif directory.
/// </summary>
/// <remarks>
/// Parsed here rather than by a library because files may be hostile: given 1171 files with corrupted headers,
/// BitMiracle.LibTiff.NET 2.4.660 answered with seven kinds of undocumented exceptions and took up to 15 s and 4.3 GB.
/// Here every count is checked against the length of the file, and no directory is read twice.
/// </remarks>
internal sealed class TiffFile
{
    private const int MaxDirectories = 64;
    private const int MaxEntries = 4096;
    private const long MaxCount = 1L << 48; // values of a tag: no file has more, and 8 times this does not overflow
    private readonly HashSet<long> seen = [];
    private readonly List<TiffDirectory> directories = [];
    private readonly List<RawWarning> warnings = [];
    private readonly RawBytes source;
    private readonly bool bigEndian;
    private readonly TiffForm form;

    private TiffFile(RawBytes source, bool bigEndian, TiffForm form)
    {
        this.source = source;
        this.bigEndian = bigEndian;
        this.form = form;
    }

    /// <summary>The image directories in file order; there is at least one.</summary>
    public IReadOnlyList<TiffDirectory> Directories => directories;

    /// <summary>The Exif directory; null when there is no readable one.</summary>
    public TiffDirectory? Exif { get; private set; }

    /// <summary>Faults of directories that were ignored.</summary>
    public IReadOnlyList<RawWarning> Warnings => warnings;

    /// <summary>Reads all directories, without their values.</summary>
    /// <param name="source">The bytes.</param>
    /// <param name="ofAnyNumber">Whether the byte order may be followed by a number other than 42: some makers use
    /// their own.</param>
    /// <exception cref="RawFormatException">The file is not TIFF, or its first directory cannot be read.</exception>
    public static TiffFile Read(RawBytes source, bool ofAnyNumber = false)
    {
        Span<byte> header = stackalloc byte[TiffForm.MostHeaderBytes];
        header.Clear();
        ReadOnlySpan<byte> read = header[..source.Read(0, header)];
        bool bigEndian = header[0] == 'M';
        TiffForm form = TiffForm.Detect(read);
        if (!ofAnyNumber || read.Length < form.HeaderBytes)
            CheckHeader(source, read, form);
        var file = new TiffFile(source, bigEndian, form);
        file.Walk(form.FirstDirectory(read, bigEndian));
        return file;
    }

    private static void CheckHeader(RawBytes source, ReadOnlySpan<byte> header, TiffForm form)
    {
        var start = new RawLocation(source.File, null, null, null, 0);
        bool saysBig = header is [0x49, 0x49, 43, 0, ..] or [0x4D, 0x4D, 0, 43, ..];
        if (saysBig && header.Length >= TiffForm.MostHeaderBytes && form != TiffForm.Big)
            throw new RawFormatException(
                RawRefusal.UnknownCoding,
                start,
                "this is BigTIFF, the form for files above 4 GB, with offsets of other than 8 bytes.",
                "Save the frame as ordinary TIFF or DNG."
            );
        if (header.Length < form.HeaderBytes || !RawFile.MayBe(header))
            throw new RawFormatException(
                RawRefusal.AnotherFormat,
                start,
                "expected the first bytes of a TIFF or DNG file, found "
                    + (
                        header.IsEmpty
                            ? "an empty file."
                            : Convert.ToHexString(header[..Math.Min(4, header.Length)]) + "."
                    ),
                "Leave it out, or convert it to DNG."
            );
    }

    private void Walk(long first)
    {
        directories.Add(ReadDirectory(first, 0, "directory 0", out long next));
        FollowTree(directories[0], depth: 0);
        while (next != 0 && TryRead(next, "next directory", out TiffDirectory? directory, out next))
        {
            directories.Add(directory);
            FollowTree(directory, depth: 0);
        }
    }

    /// <summary>
    /// Reads sub-directories recursively, and the Exif directory of the first directory that has one.
    /// </summary>
    private void FollowTree(TiffDirectory parent, int depth)
    {
        foreach (long offset in Optional(parent, Tag.SubIFDs, MaxDirectories))
        {
            if (!TryRead(offset, "sub-directory", out TiffDirectory? child, out _))
                continue;
            directories.Add(child);
            if (depth < 2)
                FollowTree(child, depth + 1);
        }
        if (
            Exif is null
            && Optional(parent, Tag.ExifIFD, 1) is [var exif]
            && TryRead(exif, "Exif directory", out TiffDirectory? found, out _)
        )
            Exif = found;
    }

    private long[] Optional(TiffDirectory directory, Tag tag, int most)
    {
        try
        {
            return directory.Integers(tag, most);
        }
        catch (RawFormatException problem)
        {
            warnings.Add(
                new RawWarning(
                    RawWarningCodes.BrokenDirectory,
                    problem.Location,
                    $"{problem.Problem} The tag was ignored."
                )
            );
            return [];
        }
    }

    private bool TryRead(long offset, string name, [NotNullWhen(true)] out TiffDirectory? directory, out long next)
    {
        (directory, next) = (null, 0);
        int index = directories.Count;
        if (index >= MaxDirectories)
            return Pass(name, offset, $"the file has more than {MaxDirectories} directories; the rest was ignored.");
        try
        {
            string title = name == "Exif directory" ? name : Invariant($"directory {index}");
            directory = ReadDirectory(offset, index, title, out next);
            return true;
        }
        catch (RawFormatException problem)
        {
            return Pass(name, offset, $"{problem.Problem} The directory was ignored.");
        }
    }

    private bool Pass(string name, long offset, string message)
    {
        warnings.Add(
            new RawWarning(
                RawWarningCodes.BrokenDirectory,
                new RawLocation(source.File, name, null, null, offset),
                message
            )
        );
        return false;
    }

    private TiffDirectory ReadDirectory(long offset, int index, string name, out long next)
    {
        if (offset < form.HeaderBytes || offset + form.CountBytes > source.Length)
            throw Damaged(
                name,
                offset,
                Invariant($"the directory would begin at byte {offset} of a file of {source.Length} bytes.")
            );
        if (!seen.Add(offset))
            throw Damaged(name, offset, "the directory was read before: the directories run in a circle.");
        Span<byte> number = stackalloc byte[form.OffsetBytes];
        source.Read(offset, number[..form.CountBytes]);
        long count = TiffForm.Unsigned(number[..form.CountBytes], bigEndian);
        if (count is 0 or > MaxEntries)
            throw Damaged(name, offset, Invariant($"expected 1 to {MaxEntries} entries, found {count}."));
        long end = offset + form.CountBytes + (count * form.EntryBytes);
        if (end > source.Length)
            throw Damaged(
                name,
                offset,
                Invariant($"its {count} entries end at byte {end}, but the file ends after {source.Length} bytes.")
            );
        var bytes = new byte[count * form.EntryBytes];
        source.Read(offset + form.CountBytes, bytes);
        next = source.Read(end, number) == number.Length ? TiffForm.Unsigned(number, bigEndian) : 0;
        return new TiffDirectory(source, bigEndian, index, name, Entries(bytes, offset + form.CountBytes));
    }

    private Dictionary<Tag, TiffEntry> Entries(byte[] bytes, long offset)
    {
        var entries = new Dictionary<Tag, TiffEntry>();
        int valueAt = form.EntryBytes - form.OffsetBytes;
        for (int at = 0; at < bytes.Length; at += form.EntryBytes)
        {
            ReadOnlySpan<byte> entry = bytes.AsSpan(at, form.EntryBytes);
            var tag = (Tag)TiffForm.Unsigned(entry[..2], bigEndian);
            var type = (TiffType)TiffForm.Unsigned(entry[2..4], bigEndian);
            long count = Math.Min(TiffForm.Unsigned(entry[4..valueAt], bigEndian), MaxCount);
            bool inside = TiffEntry.BytesOf(type) * count <= form.OffsetBytes;
            long place = inside ? offset + at + valueAt : TiffForm.Unsigned(entry[valueAt..], bigEndian);
            // of a repeated tag the first one counts
            entries.TryAdd(tag, new TiffEntry(tag, type, count, place, offset + at));
        }
        return entries;
    }

    private RawFormatException Damaged(string name, long offset, string problem) =>
        new(RawRefusal.Damaged, new RawLocation(source.File, name, null, null, offset), problem, TiffDirectory.Repair);
}
