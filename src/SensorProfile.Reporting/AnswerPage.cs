using System.Text;
using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkMatch;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.Decisions.Exposure;
using SensorProfile.Decisions.FlatPlan;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.Decisions.Shots;
using SensorProfile.Decisions.Tolerance;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Reporting.Answers;
using SensorProfile.Reporting.Answers.Darks;
using SensorProfile.Reporting.Answers.Flats;
using SensorProfile.Reporting.Answers.Nights;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Content.Nights;
using SensorProfile.Reporting.Content.Sensor;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Pdf;
using SensorProfile.Reporting.Plots.Nights;
using SensorProfile.Reporting.Tables;

namespace SensorProfile.Reporting;

/// <summary>
/// One answer as a page to keep: a PDF to print, an HTML page, and the numbers of its curves or lists as CSV.
/// </summary>
/// <remarks>
/// The same answer gives the same bytes. Files of the same names in the folder are replaced; the folder is made when it
/// is missing.
/// </remarks>
public static class AnswerPage
{
    /// <summary>
    /// How cold to run: the curve, the choice, the nights (<c>setpoint.pdf</c>, <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <param name="profile">The camera.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static void Write(CameraProfile profile, SetpointAnswer answer, string folder)
    {
        ArgumentNullException.ThrowIfNull(answer);
        SetpointAnswer[] skies = [answer, .. answer.OtherSkies];
        AnswerDocument words = SetpointDocument.Compose(answer);
        var figures = new FigureCounter();
        List<Block> blocks = [DecisionBlocks.Head(words)];
        if (SetpointBlocks.Figure(skies, figures, "setpoint.csv") is { } figure)
            blocks.Add(figure);
        blocks.AddRange(
            skies.Length > 1 ? [SetpointBlocks.Table(skies)] : DecisionBlocks.Numbers(answer, "beyond the profile")
        );
        blocks.AddRange([
            .. SetpointBlocks.Noise(answer),
            .. SetpointBlocks.Nights(answer),
            .. DecisionBlocks.Tail(words),
            .. DecisionBlocks.Skies(skies.Select(sky => sky.Sky)),
        ]);
        Write(folder, "setpoint", Document(profile, "how cold to run it", blocks), DecisionCurves.Setpoint(skies));
    }

    /// <summary>
    /// How far off the darks may be: the curves, the causes (<c>dark-tolerance.pdf</c>, <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <inheritdoc cref="Write(CameraProfile, SetpointAnswer, string)"/>
    public static void Write(CameraProfile profile, ToleranceAnswer answer, string folder) =>
        Write(profile, answer, ToleranceDocument.Compose(answer), folder);

    /// <summary>The same, with the sentences of a document already made.</summary>
    internal static void Write(CameraProfile profile, ToleranceAnswer answer, AnswerDocument words, string folder)
    {
        ToleranceAnswer[] skies = [answer, .. answer.OtherSkies];
        List<Block> blocks = [DecisionBlocks.Head(words)];
        if (ToleranceBlocks.Figure(new FigureCounter(), "dark-tolerance.csv", (answer, "")) is { } figure)
            blocks.Add(figure);
        blocks.AddRange(
            skies.Length > 1
                ? [ToleranceBlocks.Table(skies.Select(sky => (sky.Sky.Name, sky)))]
                : DecisionBlocks.Numbers(answer, "no limit")
        );
        if (answer.Dithered is { } dithered)
            blocks.AddRange([
                new SubheadingBlock("With and without dithering"),
                ToleranceBlocks.Table([
                    ("not dithered", answer),
                    ($"{dithered.Stack.DitherPositions} positions, outliers rejected", dithered),
                ]),
            ]);
        blocks.AddRange([
            new SubheadingBlock($"What each cause alone allows, {answer.Sky.Name}"),
            ToleranceBlocks.Causes(answer),
        ]);
        blocks.AddRange([.. DecisionBlocks.Tail(words), .. DecisionBlocks.Skies(skies.Select(sky => sky.Sky))]);
        Write(
            folder,
            "dark-tolerance",
            Document(profile, "how close the darks must be", blocks),
            DecisionCurves.Tolerance(skies)
        );
    }

    /// <summary>
    /// Darks on disk against lights on disk: the verdicts, every pair, the lights through the night
    /// (<c>dark-match.pdf</c>, <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <param name="answer">The answer.</param>
    /// <param name="sky">The sky it was judged under; null when none was given.</param>
    /// <param name="created">Date of the page.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static void Write(MatchAnswer answer, SkyRate? sky, DateTimeOffset created, string folder) =>
        Write(answer, sky, MatchDocument.Compose(answer, sky, []), created, folder);

    /// <summary>The same, with the sentences of a document already made.</summary>
    internal static void Write(
        MatchAnswer answer,
        SkyRate? sky,
        AnswerDocument words,
        DateTimeOffset created,
        string folder
    )
    {
        List<Block> blocks = [DecisionBlocks.Head(words), MatchBlocks.Verdicts(answer)];
        if (MatchBlocks.Night(answer) is { } figure)
            blocks.Add(figure);
        if (answer.Pairs.Count > answer.Matches.Count)
            blocks.AddRange([new SubheadingBlock(MatchBlocks.PairsTitle(answer)), MatchBlocks.Pairs(answer)]);
        blocks.AddRange([.. DecisionBlocks.Tail(words), .. DecisionBlocks.Skies(sky is null ? [] : [sky])]);
        var document = new ReportDocument(
            "Darks for these lights",
            "Each light set compared with each dark set: settings, size, exposure, temperature through the night.",
            created,
            [new ReportSection(null, null, blocks)]
        )
        {
            Kind = "lights and darks",
        };
        Write(folder, "dark-match", document, MatchTable.Of(answer));
    }

    /// <summary>
    /// The darks to shoot, as a list to print, with what each number of darks costs (<c>darks-plan.pdf</c>,
    /// <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <inheritdoc cref="Write(CameraProfile, SetpointAnswer, string)"/>
    public static void Write(CameraProfile profile, PlanAnswer answer, string folder) =>
        Write(profile, answer, PlanDocument.Compose(answer), folder);

    /// <summary>The same, with the sentences of a document already made.</summary>
    internal static void Write(CameraProfile profile, PlanAnswer answer, AnswerDocument words, string folder)
    {
        List<Block> blocks = [DecisionBlocks.Head(words), ListBlocks.Masters(answer)];
        if (DarkCountPlot.Draw(answer.Stacks, [.. answer.Stacks.Select(Name)]) is { } panel)
            blocks.Add(
                new FigureBlock(
                    1,
                    "What the noise of the master dark costs each planned stack, against the number of darks in its "
                        + "master; the marks show the fewest within the accepted loss when light and dark agree in "
                        + "temperature. "
                        + "The rule of thumb of 20 (common practice, no source) is dashed.",
                    [panel]
                )
            );
        blocks.AddRange([.. DecisionBlocks.Numbers(answer, "–"), .. DecisionBlocks.Tail(words)]);
        Write(folder, "darks-plan", Document(profile, "darks to shoot", blocks), stream =>
            Csv(stream, writer => DecisionTables.Write(answer, writer))
        );
    }

    /// <summary>
    /// How many flats, at which level: the curve, the levels (<c>flats-plan.pdf</c>, <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <inheritdoc cref="Write(CameraProfile, SetpointAnswer, string)"/>
    public static void Write(CameraProfile profile, FlatPlanAnswer answer, string folder) =>
        Write(profile, answer, FlatPlanDocument.Compose(answer), folder);

    /// <summary>The same, with the sentences of a document already made.</summary>
    internal static void Write(CameraProfile profile, FlatPlanAnswer answer, AnswerDocument words, string folder)
    {
        List<Block> blocks = [DecisionBlocks.Head(words)];
        FlatPlanAnswer[] stacks = answer.Dithered is { } dithered ? [answer, dithered] : [answer];
        if (FlatBlocks.Figure(new FigureCounter(), null, stacks) is { } figure)
            blocks.Add(figure);
        blocks.AddRange([
            .. DecisionBlocks.Numbers(answer, "not measured"),
            new SubheadingBlock("Level by level"),
            FlatBlocks.Levels(answer),
            .. DecisionBlocks.Tail(words),
            .. DecisionBlocks.Skies([answer.Sky]),
        ]);
        Write(folder, "flats-plan", Document(profile, "flats to take", blocks), stream =>
            Csv(stream, writer => DecisionTables.Write(answer, writer))
        );
    }

    /// <summary>
    /// The frames to take for a characterisation, as a list to print (<c>shots.pdf</c>, <c>.html</c>, <c>.csv</c>).
    /// </summary>
    /// <param name="answer">The answer.</param>
    /// <param name="created">Date of the page.</param>
    /// <param name="folder">The folder to write into.</param>
    /// <exception cref="IOException">The folder cannot be written to.</exception>
    public static void Write(ShotListAnswer answer, DateTimeOffset created, string folder)
    {
        ArgumentNullException.ThrowIfNull(answer);
        AnswerDocument words = ShotsDocument.Compose(answer);
        List<Block> blocks = [DecisionBlocks.Head(words)];
        if (answer.Shots.Count > 0)
            blocks.Add(ListBlocks.Shots(answer));
        if (answer.Expected.Count > 0)
            blocks.AddRange([
                new SubheadingBlock("Uncertainties to expect from a typical camera"),
                ListBlocks.Expected(answer),
            ]);
        if (answer.Additions.Count > 0)
            blocks.AddRange([
                new SubheadingBlock("What more frames would bring, most useful first"),
                ListBlocks.Additions(answer),
            ]);
        blocks.AddRange(DecisionBlocks.Tail(words));
        var document = new ReportDocument(
            "Frames to take",
            "Tick off what is done; frames are counted, times estimated.",
            created,
            [new ReportSection(null, null, blocks)]
        )
        {
            Kind = "shot list",
        };
        Write(folder, "shots", document, stream => Csv(stream, writer => DecisionTables.Write(answer, writer)));
    }

    /// <summary>
    /// Gain setting and exposure: the settings side by side under each sky (<c>exposure.pdf</c>, <c>.html</c>,
    /// <c>.csv</c>).
    /// </summary>
    /// <inheritdoc cref="Write(CameraProfile, SetpointAnswer, string)"/>
    public static void Write(CameraProfile profile, GainChoiceAnswer answer, string folder)
    {
        ArgumentNullException.ThrowIfNull(answer);
        GainChoiceAnswer[] skies = [answer, .. answer.OtherSkies];
        AnswerDocument words = ExposureDocument.Compose(answer);
        List<Block> blocks =
        [
            DecisionBlocks.Head(words),
            .. skies.SelectMany(sky =>
                new Block[]
                {
                    new SubheadingBlock($"Under {DecisionText.Under(sky.Sky)}, {DecisionText.Rate(sky.Sky)}"),
                    ExposureBlocks.Modes(sky),
                }
            ),
        ];
        blocks.AddRange([.. DecisionBlocks.Tail(words), .. DecisionBlocks.Skies(skies.Select(sky => sky.Sky))]);
        Write(folder, "exposure", Document(profile, "how long to expose", blocks), ExposureTable.Of(skies));
    }

    private static string Name(DarkCountAnswer stack) =>
        $"{stack.Stack.Lights} × {QuantityText.Number(stack.Stack.ExposureSeconds)} s"
        + (stack.Stack.DitherPositions > 1 ? $", {stack.Stack.DitherPositions} positions" : "");

    private static ReportDocument Document(CameraProfile profile, string kind, IReadOnlyList<Block> blocks)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return new ReportDocument(
            $"{profile.Camera.Name}: {kind}",
            ReportContent.Subtitle(profile),
            profile.CreatedUtc,
            [new ReportSection(null, null, blocks)]
        )
        {
            Kind = "from the profile",
        };
    }

    private static void Write(string folder, string name, ReportDocument document, DataTable table) =>
        Write(folder, name, document, stream => CsvText.Write(table, stream));

    private static void Csv(Stream stream, Action<TextWriter> write)
    {
        using var writer = new StreamWriter(
            stream,
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            leaveOpen: true
        );
        write(writer);
    }

    private static void Write(string folder, string name, ReportDocument document, Action<Stream> csv)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        StagedFiles.Write(
            folder,
            new SortedDictionary<string, Action<Stream>>(StringComparer.Ordinal)
            {
                [name + ".html"] = stream => stream.Write(Encoding.UTF8.GetBytes(HtmlReport.Text(document))),
                [name + ".pdf"] = stream => stream.Write(PdfReport.Bytes(document)),
                [name + ".csv"] = csv,
            }
        );
    }
}
