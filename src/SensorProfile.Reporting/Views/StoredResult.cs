using System.Text;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Html;

namespace SensorProfile.Reporting.Views;

/// <summary>The results of a characterisation on disk, part by part, for a page that shows them.</summary>
internal sealed class StoredResult
{
    private const string ProfileName = "profile.json";
    private readonly Lazy<IReadOnlyList<SensorMap>> maps;
    private readonly Lazy<string> card;
    private readonly Lazy<IReadOnlyList<ResultSection>> sections;

    private StoredResult(string folder, string file, CameraProfile profile)
    {
        Folder = folder;
        File = file;
        Profile = profile;
        maps = new(() => SensorMap.Find(Path.Combine(folder, "maps"), profile));
        card = new(MakeCard);
        sections = new(() => [.. MakeSections()]);
    }

    /// <summary>The folder of the results.</summary>
    public string Folder { get; }

    /// <summary>The profile's file.</summary>
    public string File { get; }

    /// <summary>What was measured.</summary>
    public CameraProfile Profile { get; }

    /// <summary>Camera and date, the title of a page.</summary>
    public string Title => Profile.Camera.Name;

    /// <summary>What was measured, when, by which program.</summary>
    public string Subtitle => ReportContent.Subtitle(Profile);

    /// <summary>The numbers that matter, in one sentence.</summary>
    public string Sentence => Headline.Sentence(Profile);

    /// <summary>The settings of every mode, in words.</summary>
    public IReadOnlyList<string> Modes => [.. Profile.Modes.Select(mode => ModeLabel.Text(mode.Settings))];

    /// <summary>The maps available.</summary>
    public IReadOnlyList<SensorMap> Maps => maps.Value;

    /// <summary>The card, as markup.</summary>
    public string Card => card.Value;

    /// <summary>The sections of the report that show measurements, as markup.</summary>
    public IReadOnlyList<ResultSection> Sections => sections.Value;

    /// <summary>The files of the folder that may be served: reports, tables, maps.</summary>
    public IReadOnlyList<string> Files => ResultFiles.In(Folder);

    /// <summary>Reads the profile; maps and report are made on demand.</summary>
    /// <param name="path">A profile, or the folder that holds it.</param>
    /// <exception cref="IOException">There is no profile, or it cannot be read; the message says why.</exception>
    public static StoredResult Open(string path)
    {
        string file = Directory.Exists(path) ? Path.Combine(path, ProfileName) : path;
        string full = Path.GetFullPath(file);
        return new StoredResult(Path.GetDirectoryName(full)!, full, ProfileFile.Read(full));
    }

    /// <summary>Whether a folder holds results of this program.</summary>
    public static bool IsIn(string folder) => System.IO.File.Exists(Path.Combine(folder, ProfileName));

    private string MakeCard()
    {
        NightAnswers[] nights = [.. Profile.Modes.Select(mode => NightAnswers.Ask(Profile, mode))];
        StringBuilder page = new();
        foreach (ReportSection section in CardContent.Build(Profile, nights).Sections)
            Append(page, section);
        return page.ToString();
    }

    private IEnumerable<ResultSection> MakeSections()
    {
        FigureCounter figures = new();
        MapPicture[] pictures = [.. Maps.Select(map => map.Picture).OfType<MapPicture>()];
        for (int i = 0; i < Profile.Modes.Count; i++)
        {
            string? label = Profile.Modes.Count > 1 ? Modes[i] : null;
            ModeContext context = new(
                Profile.Modes[i],
                label,
                label is null ? "" : ModeLabel.Folders(Profile.Modes)[i] + "/",
                Profile.Findings,
                figures
            );
            foreach (ReportSection section in ReportContent.Measured(context, [.. pictures.Where(p => p.Mode == i)]))
                yield return Section(section);
        }
        if (SessionSection.Compose(Profile.Frames, figures) is { } session)
            yield return Section(session);
        yield return Section(MethodSection.Compose(Profile));
    }

    private static ResultSection Section(ReportSection section)
    {
        StringBuilder page = new();
        foreach (Block block in section.Blocks)
            HtmlBlocks.Append(page, block);
        return new ResultSection(
            section.Title ?? "",
            section.Context ?? "",
            page.ToString(),
            [.. section.Blocks.OfType<FigureBlock>().SelectMany(FigureFile.Of)]
        );
    }

    private static void Append(StringBuilder page, ReportSection section)
    {
        if (section.Title is { } title)
            page.Append("<h2>").Append(Markup.Escape(title)).Append("</h2>\n");
        foreach (Block block in section.Blocks)
            HtmlBlocks.Append(page, block);
    }
}

/// <summary>A section of a report.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Context">The settings that it is about; empty when there is only one mode.</param>
/// <param name="Html">Its content as markup, foreign text escaped.</param>
/// <param name="Figures">Its figures as separate files.</param>
internal sealed record ResultSection(string Title, string Context, string Html, IReadOnlyList<FigureFile> Figures);
