using SensorProfile.Cli.Terminal;
using SensorProfile.Frames;
using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Takes an inventory of the frames that a command was given.</summary>
internal static class FrameReading
{
    private const int RejectedShown = 20;
    private const int SameReasonShown = 3; // up to this many get a line each

    /// <summary>
    /// The inventory; files left out are named on standard error. Fails with exit code 3 when nothing readable
    /// remains.
    /// </summary>
    public static Inventory Read(Session session, IReadOnlyList<string> paths, CaptureTable? table, bool namesSay)
    {
        InventoryOptions options = new() { Table = table, NamesSay = namesSay };
        Inventory inventory = session.Side.Watch(display =>
            FrameInventory.Read(paths, options, new HeaderProgress(display), session.Stop)
        );
        session.Stop.ThrowIfCancellationRequested();
        if (inventory.Frames.Count > 0 || inventory.Rejected.Count > 1)
            Name(session.Side, inventory.Rejected);
        if (inventory.Frames.Count == 0)
            throw CommandFailure.UnreadableInput(NothingReadable(paths, inventory));
        return inventory;
    }

    private static string NothingReadable(IReadOnlyList<string> paths, Inventory inventory)
    {
        if (inventory.Rejected is [var only])
            return $"{only.File}: {only.Reason}";
        string found =
            inventory.Rejected.Count > 0
                ? $"{Counted.Nouns(inventory.Rejected.Count, "file")} left out, named above"
                : "no frame is there (FITS: .fits, .fit, .fts, also .gz or .fz; DNG and other raw files; TIFF mosaics)";
        if (inventory.PassedOver.Count > 0)
            found += $"; passed over: {PassedOver.Describe(inventory.PassedOver)}";
        return $"nothing readable in {string.Join(", ", paths)}: {found}.";
    }

    /// <summary>Names the files left out, or the first few of many; a reason that many share is printed once.</summary>
    public static void Name(StandardErrorStream side, IReadOnlyList<RejectedFile> rejected)
    {
        string[] lines =
        [
            .. rejected
                .GroupBy(file => file.Reason)
                .SelectMany(same =>
                    same.Count() > SameReasonShown ? [Line(same)] : same.Select(file => $"{file.File}: {file.Reason}")
                ),
        ];
        foreach (string line in lines.Take(RejectedShown))
            side.WriteLine($"left out: {line}");
        if (lines.Length > RejectedShown)
            side.WriteLine(
                $"left out: {Counted.Nouns(lines.Length - RejectedShown, "more file")}; --json names every one."
            );
    }

    private static string Line(IGrouping<string, RejectedFile> same) =>
        $"{same.First().File} and {Counted.Nouns(same.Count() - 1, "more file")}: {same.Key}";

    private sealed class HeaderProgress(IProgressDisplay display) : IProgress<int>
    {
        public void Report(int value) => display.Show("reading headers", value, 0, 0);
    }
}
