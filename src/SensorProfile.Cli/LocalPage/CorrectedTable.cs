using SensorProfile.Cli.Commands.Reading;
using SensorProfile.Cli.Output;
using SensorProfile.Desk.Asking;
using SensorProfile.Desk.Framing;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;

namespace SensorProfile.Cli.LocalPage;

/// <summary>Writes a person's corrections of some frames into a capture table.</summary>
internal static class CorrectedTable
{
    /// <summary>Rewrites the table: its old content with the change applied.</summary>
    /// <exception cref="CommandFailure">It lies among the frames, cannot be written, or the frames cannot be read.</exception>
    public static void Write(CaptureChange change, Session session)
    {
        if (PathRelations.IsSameOrInside(PathRelations.Resolved(change.Table), PathRelations.Resolved(change.Folder)))
            throw CommandFailure.WrongCommandLine(
                $"{change.Table} lies among the frames, which are read and never written to. Choose a folder outside them "
                    + "for the results."
            );
        CaptureTable? before = File.Exists(change.Table) ? CaptureTable.Read(change.Table) : null;
        Inventory inventory = FrameReading.Read(session, [change.Folder], before, change.NamesSay);
        Inventory corrected = FrameCorrection.Apply(inventory, change);
        OutputFile.Write(change.Table, work => CaptureTable.Write(work, corrected));
    }
}
