using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>How the numbers were obtained: frames, settings, methods, sources, cautions.</summary>
internal static class MethodSection
{
    private const int FilesShown = 40;

    /// <summary>The section.</summary>
    public static ReportSection Compose(CameraProfile profile)
    {
        var blocks = new List<Block>
        {
            new SubheadingBlock("Frames"),
            new TextBlock(
                $"{QuantityText.Count(profile.Frames.Used)} frames were used, "
                    + $"{QuantityText.Count(profile.Frames.Rejected.Count)} files left out. "
                    + "None of them was changed."
                    + (
                        profile.Frames.InputDigest.Length > 0
                            ? $" The same frames give the same digest: {profile.Frames.InputDigest}"
                            : ""
                    )
            ),
        };
        if (profile.Frames.Rejected.Count > 0)
            blocks.Add(Rejected(profile.Frames.Rejected));
        if (profile.Modes.Count > 0)
            blocks.AddRange([new SubheadingBlock("Settings"), Settings(profile.Modes)]);
        blocks.AddRange([new SubheadingBlock("Methods and sources"), new ListBlock(Sources.All)]);
        blocks.AddRange([new SubheadingBlock("Cautions"), new ListBlock(Cautions.OfProfile(profile))]);
        return new ReportSection("How these numbers were obtained", null, blocks);
    }

    private static TableBlock Rejected(IReadOnlyList<RejectedFile> files)
    {
        List<IReadOnlyList<string>> rows =
        [
            .. files.Take(FilesShown).Select(file => (IReadOnlyList<string>)[file.File, file.Reason]),
        ];
        if (files.Count > FilesShown)
            rows.Add([$"and {files.Count - FilesShown} more", "see tables/rejected.csv"]);
        return new TableBlock(["File left out", "Reason"], rows, [0.4, 0.6]);
    }

    private static TableBlock Settings(IReadOnlyList<ModeProfile> modes) =>
        new(
            ["Gain setting", "Offset", "ISO", "Binning", "Read-out"],
            [
                .. modes.Select(mode =>
                    (IReadOnlyList<string>)
                        [
                            Number(mode.Settings.Gain),
                            Number(mode.Settings.Offset),
                            Number(mode.Settings.Iso),
                            mode.Settings.Binning,
                            mode.Settings.Readout ?? "not stated",
                        ]
                ),
            ],
            [0.2, 0.2, 0.2, 0.2, 0.2]
        );

    private static string Number(double? setting) => setting is { } value ? QuantityText.Number(value) : "not stated";
}
