using System.Text.Unicode;
using SensorProfile.Raw;

namespace SensorProfile.Frames.Survey;

/// <summary>Recognises a file from its first bytes.</summary>
internal static class FileContents
{
    private const int Beginning = 512; // bytes

    // formats that are not TIFF inside; those that are show it by their first bytes
    private static readonly string[] makersRaw = [".cr3", ".crw", ".mrw", ".orf", ".raf", ".rw2", ".rwl", ".x3f"];

    private static readonly (FileContent Content, int Offset, byte[] Bytes)[] signatures =
    [
        (FileContent.RenamedFits, 0, "SIMPLE  ="u8.ToArray()),
        (FileContent.Jpeg, 0, [0xFF, 0xD8, 0xFF]),
        (FileContent.Picture, 0, [0x89, 0x50, 0x4E, 0x47]),
        (FileContent.Picture, 0, "GIF8"u8.ToArray()),
        (FileContent.Picture, 8, "WEBP"u8.ToArray()),
        (FileContent.Picture, 4, "ftyphei"u8.ToArray()),
        (FileContent.Picture, 4, "ftypmif1"u8.ToArray()),
        (FileContent.Film, 4, "ftyp"u8.ToArray()),
        (FileContent.Film, 8, "AVI "u8.ToArray()),
        (FileContent.Pdf, 0, "%PDF"u8.ToArray()),
        (FileContent.Archive, 0, [0x50, 0x4B, 0x03, 0x04]),
        (FileContent.Archive, 0, [0x1F, 0x8B]),
        (FileContent.Archive, 0, [0x37, 0x7A, 0xBC, 0xAF]),
    ];

    /// <summary>What a file is; one that cannot be opened is judged by its name.</summary>
    public static FileContent Recognise(string path)
    {
        byte[] start = [];
        try
        {
            // a pipe or a device has no length: opening or reading it might never end
            if (HoldsNothing(path))
                return Recognise(Path.GetFileName(path), []);
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
            start = new byte[Beginning];
            start = start[..file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            if (!FileNames.IsFits(path) && !FileNames.IsRawTiff(path))
                return FileContent.Other;
        }
        return Recognise(Path.GetFileName(path), start);
    }

    private static bool HoldsNothing(string path)
    {
        FileSystemInfo file = new FileInfo(path);
        if (file.LinkTarget is not null)
            file = file.ResolveLinkTarget(returnFinalTarget: true) ?? file;
        return file is FileInfo { Exists: true, Length: 0 };
    }

    /// <summary>What a file with this name and these first bytes is.</summary>
    public static FileContent Recognise(string name, ReadOnlySpan<byte> start)
    {
        if (RawFile.MayBe(start))
            return FileContent.Tiff;
        if (FileNames.IsFits(name))
            return FileContent.Fits; // whatever it is, its reader reports what is wrong
        if (start.StartsWith("FOVb"u8))
            return FileContent.LayeredRaw;
        if (Array.Exists(makersRaw, e => name.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
            return FileContent.MakersRaw;
        if (start.IsEmpty)
            return FileNames.IsRawTiff(name) ? FileContent.Tiff : FileContent.Empty;
        foreach ((FileContent content, int offset, byte[] bytes) in signatures)
        {
            if (start.Length >= offset + bytes.Length && start[offset..].StartsWith(bytes))
                return content == FileContent.RenamedFits && IsTrueMap(name) ? FileContent.TrueMap : content;
        }
        if (FileNames.IsRawTiff(name))
            return FileContent.Tiff; // damaged: its reader reports it
        return IsText(start) ? FileContent.Text : FileContent.Other;
    }

    /// <summary>The kind in words, for one file.</summary>
    public static string Word(FileContent content) =>
        content switch
        {
            FileContent.Fits => "FITS file",
            FileContent.RenamedFits => "misnamed FITS file",
            FileContent.TrueMap => "truth map",
            FileContent.Tiff => "TIFF file",
            FileContent.MakersRaw or FileContent.LayeredRaw => "raw file",
            FileContent.Jpeg => "JPEG picture",
            FileContent.Picture => "picture",
            FileContent.Film => "film",
            FileContent.Pdf => "PDF",
            FileContent.Archive => "packed file",
            FileContent.Text => "text file",
            FileContent.Empty => "empty file",
            _ => "other file",
        };

    /// <summary>The extension, in lower case, when only it tells the kind of file; otherwise empty.</summary>
    public static string Ending(FileContent content, string name)
    {
        const int most = 6; // including the dot
        string ending = Path.GetExtension(name).ToLowerInvariant();
        bool says = content == FileContent.Other && ending.Length is > 1 and <= most;
        return says && ending.Skip(1).All(char.IsAsciiLetterOrDigit) ? ending : "";
    }

    private static bool IsTrueMap(string name) => name.EndsWith(".truth", StringComparison.OrdinalIgnoreCase);

    private static bool IsText(ReadOnlySpan<byte> start)
    {
        if (start.IndexOfAnyInRange((byte)0, (byte)8) >= 0)
            return false;
        for (int cut = 0; cut <= 3 && cut < start.Length; cut++) // the last character may be incomplete
        {
            if (Utf8.IsValid(start[..^cut]))
                return true;
        }
        return false;
    }
}
