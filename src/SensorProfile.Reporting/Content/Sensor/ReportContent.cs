using System.Globalization;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Puts a report together: its sections and their order.</summary>
internal static class ReportContent
{
    /// <summary>The report of a profile.</summary>
    /// <param name="profile">The profile.</param>
    /// <param name="maps">Pictures of the sensor; null when there are none.</param>
    /// <param name="nights">What each mode means for usual nights; null computes it.</param>
    public static ReportDocument Build(
        CameraProfile profile,
        ReportMaps? maps,
        IReadOnlyList<NightAnswers>? nights = null
    )
    {
        nights ??= [.. profile.Modes.Select(mode => NightAnswers.Ask(profile, mode))];
        var figures = new FigureCounter();
        var sections = new List<ReportSection> { SummarySection.Compose(profile, nights) };
        IReadOnlyList<string> folders = ModeLabel.Folders(profile.Modes);
        for (int i = 0; i < profile.Modes.Count; i++)
        {
            ModeProfile mode = profile.Modes[i];
            bool several = profile.Modes.Count > 1;
            var context = new ModeContext(
                mode,
                several ? ModeLabel.Text(mode.Settings) : null,
                several ? folders[i] + "/" : "",
                profile.Findings,
                figures
            );
            if (several)
                sections.Add(SummarySection.Compose(context, nights[i]));
            sections.Add(NightsSection.Compose(context, nights[i]));
            sections.Add(SummarySection.Quantities(context));
            sections.AddRange(Measured(context, [.. (maps?.Pictures ?? []).Where(picture => picture.Mode == i)]));
        }
        if (SessionSection.Compose(profile.Frames, figures) is { } session)
            sections.Add(session);
        sections.Add(MethodSection.Compose(profile));
        return new ReportDocument(profile.Camera.Name, Subtitle(profile), profile.CreatedUtc, sections);
    }

    /// <summary>What was measured of one mode, without the decisions.</summary>
    public static IEnumerable<ReportSection> Measured(ModeContext context, IReadOnlyList<MapPicture> pictures)
    {
        yield return NoiseSection.Compose(context);
        yield return LightSection.Compose(context);
        yield return DarkSection.Signal(context);
        yield return DarkSection.Current(context);
        if (BadPlacesSection.Compose(context, pictures) is { } places)
            yield return places;
        yield return PatternSection.Compose(context, pictures);
        if (BlackLevelSection.Compose(context) is { } level)
            yield return level;
    }

    /// <summary>What was measured, when, by which program.</summary>
    public static string Subtitle(CameraProfile profile)
    {
        CameraInfo camera = profile.Camera;
        string colour = camera.ColourFilter is { } filter ? $"colour filter {filter}" : "monochrome";
        string step = camera.CodeStep > 1 ? $", codes {camera.CodeStep} ADU apart" : "";
        string date = profile.CreatedUtc.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return $"{camera.Width} × {camera.Height} px, {colour}, {camera.StoredBits} bits stored{step} · profile of "
            + $"{date} UTC · {profile.Software.Name} {profile.Software.Version}";
    }
}
