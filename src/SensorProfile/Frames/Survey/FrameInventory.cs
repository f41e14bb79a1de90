using SensorProfile.Frames.Capture;
using SensorProfile.Frames.Headers;
using SensorProfile.Frames.Sets;
using SensorProfile.Profiles.Session;
using SensorProfile.Raw;

namespace SensorProfile.Frames.Survey;

/// <summary>Makes the inventory of frames from their headers: the entry point of this room.</summary>
public static class FrameInventory
{
    /// <summary>
    /// Finds the frames under the given paths, interprets their headers, applies the capture table, and groups them.
    /// </summary>
    /// <param name="paths">Files and folders; folders are searched recursively.</param>
    /// <param name="options">Capture table, names, tolerance.</param>
    /// <param name="progress">Receives the number of files read so far.</param>
    /// <param name="ct">Cancels between two files.</param>
    /// <returns>The same inventory at any parallelism; an unreadable file is left out by name and never stops the
    /// rest.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature tolerance is negative or not a number.</exception>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static Inventory Read(
        IReadOnlyList<string> paths,
        InventoryOptions options,
        IProgress<int>? progress = null,
        CancellationToken ct = default
    )
    {
        if (!(options.TemperatureTolerance >= 0))
            throw new ArgumentOutOfRangeException(
                nameof(options),
                options.TemperatureTolerance,
                "The temperature tolerance must be 0 °C or more."
            );
        (IReadOnlyList<ScannedFile> files, IReadOnlyList<Finding> scanFindings, var missing, var passedOver) =
            FolderScan.Scan(paths, ct);
        FrameReader.Result[] results = ReadHeaders(files, options.MaxParallelism, progress, ct);
        (CaptureRow?[] rows, IReadOnlyList<Finding> matching) = TableMatching.Match(files, options.Table);

        Sorting sorting = Sort(files, results, rows, options.NamesSay);
        (IReadOnlyList<ReadFrame> unique, var copies, IReadOnlyList<Finding> duplicates) = DuplicateFrames.Remove(
            SerialNumbers.TellApart(sorting.Frames),
            ct
        );
        (IReadOnlyList<ReadFrame> known, IReadOnlyList<Finding> typed) = TypedTemperatures.Spread(unique);
        (IReadOnlyList<ReadFrame> believed, IReadOnlyList<Finding> stuck) = StuckTemperatures.Check(known);
        List<Frame> frames = [.. believed.Select(f => f.Frame).Order(FrameOrder.ByTimeThenName)];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> grouping) = Grouping.Group(
            frames,
            options.TemperatureTolerance
        );

        return new Inventory
        {
            Frames = frames,
            Sets = sets,
            Rejected =
            [
                .. missing.Select(m => new RejectedFile(m.Path, m.Reason)),
                .. sorting.Rejected.Concat(copies).OrderBy(r => r.File, StringComparer.Ordinal),
            ],
            PassedOver = passedOver,
            LeftOut = [.. sorting.LeftOut.Order(FrameOrder.ByTimeThenName)],
            Findings =
            [
                .. PathFindings(missing, frames.Count),
                .. scanFindings,
                .. sorting.Findings,
                .. options.Table?.Findings ?? [],
                .. matching,
                .. HeaderFindings.Merge([
                    .. believed.OrderBy(f => f.Frame, FrameOrder.ByTimeThenName).Select(f => (f.Frame.Name, f.Issues)),
                ]),
                .. duplicates,
                .. stuck,
                .. typed,
                .. CoarseTemperatures.Find(believed),
                .. SessionChecks.Find(frames),
                .. grouping,
            ],
        };
    }

    private static FrameReader.Result[] ReadHeaders(
        IReadOnlyList<ScannedFile> files,
        int parallelism,
        IProgress<int>? progress,
        CancellationToken ct
    )
    {
        FrameReader.Result[] results = new FrameReader.Result[files.Count];
        int done = 0;
        ParallelOptions parallel = new() { MaxDegreeOfParallelism = Math.Max(1, parallelism), CancellationToken = ct };
        Parallel.For(0, files.Count, parallel, i =>
        {
            results[i] = FrameReader.Read(files[i]);
            progress?.Report(Interlocked.Increment(ref done));
        });
        return results;
    }

    private sealed record Sorting(
        List<ReadFrame> Frames,
        List<Frame> LeftOut,
        List<RejectedFile> Rejected,
        List<Finding> Findings
    );

    /// <summary>
    /// Separates usable frames from damaged files, files without an image, stacks, and frames that the table leaves
    /// out.
    /// </summary>
    private static Sorting Sort(
        IReadOnlyList<ScannedFile> files,
        FrameReader.Result[] results,
        CaptureRow?[] rows,
        bool namesSay
    )
    {
        Sorting sorting = new([], [], [], []);
        List<string> damaged = [],
            stacks = [],
            several = [];
        List<(string, RawTreatmentKind)> treated = [];
        for (int i = 0; i < files.Count; i++)
        {
            (string name, FrameReader.Result result, CaptureRow? row) = (files[i].Name, results[i], rows[i]);
            if (result.Images > 1)
                several.Add(name);
            if (result.Reason is { } reason)
            {
                sorting.Rejected.Add(new RejectedFile(name, reason));
                if (result.IsDamaged)
                    damaged.Add(name);
                if (result.Treatment is { } treatment)
                    treated.Add((name, treatment));
            }
            else if (row is { Use: false })
            {
                sorting.Rejected.Add(new RejectedFile(name, "Left out by the capture table."));
                sorting.LeftOut.Add(ReadFrame.Combine(result.Bare!, result.Header!, row, namesSay).Frame);
            }
            // a kind in the table means that the user knows better: use the frame
            else if (result.Header!.StackSign is { } sign && row?.Kind is null)
            {
                sorting.Rejected.Add(
                    new RejectedFile(name, $"It is a stack of several frames ({sign}), not a raw frame.")
                );
                stacks.Add(name);
            }
            else
                sorting.Frames.Add(ReadFrame.Combine(result.Bare!, result.Header, row, namesSay));
        }
        sorting.Findings.AddRange([.. FileFindings(damaged, stacks, several), .. RawTreatments.Findings(treated)]);
        return sorting;
    }

    private static IEnumerable<Finding> FileFindings(List<string> damaged, List<string> stacks, List<string> several)
    {
        if (damaged.Count > 0)
            yield return new Finding(
                FindingCodes.FileUnreadable,
                Severity.Warning,
                $"{Counted.Files(damaged.Count)} left out as unreadable ({Counted.Some(damaged)}): the "
                    + "list of rejected files says why; copy them again from the camera if you can.",
                damaged
            );
        if (stacks.Count > 0)
            yield return new Finding(
                FindingCodes.StackedFrame,
                Severity.Warning,
                $"{Counted.Files(stacks.Count)} left out as stacks of several frames ({Counted.Some(stacks)}): "
                    + "noise is measured on raw frames only; if a header is wrong, give the kind in the capture "
                    + "table.",
                stacks
            );
        if (several.Count > 0)
            yield return new Finding(
                FindingCodes.SeveralImages,
                Severity.Note,
                $"{Counted.Files(several.Count)} with more than one image: the first image of each was taken; "
                    + "save the others as files of their own to use them, too.",
                several
            );
    }

    private static IEnumerable<Finding> PathFindings(IReadOnlyList<(string Path, string Reason)> missing, int frames)
    {
        if (missing.Count > 0)
            yield return new Finding(
                FindingCodes.PathMissing,
                Severity.Warning,
                $"{Counted.Nouns(missing.Count, "path")} not found "
                    + $"({Counted.Some([.. missing.Select(m => m.Path)])}): check the spelling, or whether the disk "
                    + "is connected.",
                [.. missing.Select(m => m.Path)]
            );
        if (frames == 0)
            yield return new Finding(
                FindingCodes.NoFrames,
                Severity.Refusal,
                "No frame that can be used was found: give a folder with FITS files (.fits, .fit, .fts, also .gz or "
                    + ".fz), DNG or other raw files, or TIFF mosaics."
            );
    }
}
