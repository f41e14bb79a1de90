using SensorProfile.Desk.Asking;

namespace SensorProfile.Desk.Framing;

/// <summary>The frames that were brought, as of the last survey; shared by all windows.</summary>
internal sealed class SurveyedFrames(IDeskDoor door, DeskOptions options)
{
    /// <summary>The folder of the frames; empty before one was chosen.</summary>
    public string Folder { get; private set; } = options.Folder ?? "";

    /// <summary>The folder of the results to come.</summary>
    public string Out { get; set; } = "";

    /// <summary>Whether names of files and folders are believed.</summary>
    public bool NamesSay { get; set; }

    /// <summary>The capture table, where one was made; it lies beside the results.</summary>
    public string? Table { get; private set; }

    /// <summary>The last survey; null before the first.</summary>
    public DeskReply? Survey { get; private set; }

    /// <summary>Where the capture table goes: beside the results, never among the frames.</summary>
    public string TablePlace => Out.TrimEnd('/', '\\') + "-capture.csv";

    /// <summary>Surveys a folder.</summary>
    public void Look(string folder, CancellationToken stop)
    {
        string full = Path.GetFullPath(folder);
        if (full != Folder || Out.Length == 0)
        {
            Table = null;
            Out = FreeBeside(full);
        }
        Folder = full;
        if (Table is null && File.Exists(TablePlace))
            Table = TablePlace;
        Survey = door.Ask(
            [
                "survey",
                Folder,
                .. Table is null ? [] : new[] { "--table", Table },
                .. NamesSay ? ["--names-say"] : Array.Empty<string>(),
            ],
            null,
            stop
        );
    }

    /// <summary>Corrects a set of frames and surveys again; returns the reason when the correction cannot be saved.</summary>
    public string Correct(FrameSetRow row, string? kind, double? temperature, double? exposure, bool? use)
    {
        string place = Table ?? TablePlace;
        DeskReply reply = door.SaveTable(
            new CaptureChange(Folder, place, NamesSay, row.Files, kind, temperature, exposure, use),
            CancellationToken.None
        );
        if (reply.Trouble.Length > 0)
            return reply.Trouble;
        Table = place;
        Look(Folder, CancellationToken.None);
        return "";
    }

    private static string FreeBeside(string folder)
    {
        string trimmed = Path.TrimEndingDirectorySeparator(folder);
        // the root of a disk has no parent: use the home folder
        string parent = Path.GetDirectoryName(trimmed) ?? Folders.FolderListing.Home;
        return Path.Combine(parent, Path.GetFileName(trimmed) + "-profile");
    }
}
