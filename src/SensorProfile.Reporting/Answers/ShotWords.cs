using SensorProfile.Decisions.Shots;
using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Content.Blocks;

namespace SensorProfile.Reporting.Answers;

/// <summary>A shot list in words.</summary>
internal static class ShotWords
{
    public static AnswerWords Phrase(ShotListAnswer answer) =>
        new(Sentence(answer), Reason(answer), Verdict.Answered)
        {
            Cautions = answer.Cooled ? Cautions.ShotsCooled : Cautions.ShotsUncooled,
        };

    public static IReadOnlyList<string> RulesOfThumb { get; } =
    ["\"5-minute darks are typical\" (common practice, no source): take the exposures of your own lights instead."];

    /// <summary>What a line of the list is for, and how to reach its conditions.</summary>
    public static string Purpose(PlannedShot shot) =>
        shot.Purpose switch
        {
            ShotPurpose.ReadNoise => "shortest exposure, covered: read noise (8 or more give it for every pixel)",
            ShotPurpose.White => "a pair exposed until it is evenly white: saturation and full well",
            ShotPurpose.DimLight =>
                "a pair under an even, dim light: gain and linearity; keep the light for all pairs, "
                    + "change the exposure",
            ShotPurpose.SameLight => "a pair under the same light, exposed longer",
            ShotPurpose.SetCooler => $"covered; set the cooler to {Celsius(shot)} in steps and wait until it is steady",
            ShotPurpose.InRoom => $"covered; in a room of about {Celsius(shot)}, after half an hour of running",
            ShotPurpose.OutsideAtNight => "covered; outside at night, after half an hour of running",
            ShotPurpose.CoolPlace => $"covered; in a cool room or outside in the evening, near {Celsius(shot)}",
            ShotPurpose.AsBefore => "covered; where the sensor read this before, after running as long",
            ShotPurpose.SameTemperature => "covered; the same temperature",
            _ => "covered; this temperature",
        };

    /// <summary>"12 darks up to 300 s at −20 °C".</summary>
    public static string Frames(AddedFrames added) =>
        added.Kind switch
        {
            FrameKind.Bias => $"{Plain.Whole(added.Frames)} more bias frames",
            FrameKind.Flat => $"{Plain.Whole(added.Frames / 2)} more flat pairs",
            _ => $"{Plain.Whole(added.Frames)} darks {(added.Exposures > 1 ? "up to" : "of")} "
                + $"{Plain.Seconds(added.Longest!.Value)} at {Plain.Celsius(added.Temperature!.Value)}",
        };

    private static string Celsius(PlannedShot shot) => Plain.Celsius(shot.Temperature!.Value);

    private static string Sentence(ShotListAnswer answer) =>
        answer.Existing is { KindsUnknown: true }
            ? $"Say what the frames are first: none says whether it is a bias, dark or flat. {Take(answer)}"
        : answer.Existing is not null && answer.Shots.Count == 0
            ? $"Nothing is missing: characterise what you have. {Best(answer, "The most useful addition")}".TrimEnd()
        : Take(answer);

    private static string Take(ShotListAnswer answer) =>
        $"Take {Plain.Whole(answer.Shots.Sum(s => s.Frames))} frames in {Plain.Duration(answer.Shots.Sum(s => s.Seconds))} "
        + $"({Plain.Bytes(1e6 * answer.Quantities[QuantityNames.DiskSpace]!.Value)}): {Counts(answer.Shots)}.";

    private static string Counts(IReadOnlyList<PlannedShot> shots) =>
        string.Join(
            ", ",
            shots
                .GroupBy(s => s.Kind)
                .Select(g =>
                    $"{Plain.Whole(g.Sum(s => s.Frames))} {(g.Key == FrameKind.Bias ? "bias frames" : EnumWord.Of(g.Key) + "s")}"
                )
        );

    private static string Reason(ShotListAnswer answer)
    {
        if (answer.Darks is { } darks)
            return $"Darks of {Plain.Whole(darks.Exposures)} exposures up to {Plain.Seconds(darks.Longest)} at "
                + $"{Plain.Whole(darks.Temperatures)} temperatures give dark current and its law, bias pairs the read noise, "
                + "flat pairs the gain.";
        string more = answer.Shots.Count == 0 ? "" : Best(answer, "The most useful single addition");
        return There(answer.Existing!) + (more.Length == 0 ? "" : " " + more);
    }

    private static string There(ExistingFrames there)
    {
        string temperatures = string.Join(", ", there.DarkTemperatures.Select(Plain.Celsius));
        return $"There are {Plain.Whole(there.Bias)} bias frames, {Plain.Whole(there.FlatPairs)} flat pairs, and darks of "
            + $"{Plain.Whole(there.DarkExposures)} or more exposures at "
            + $"{(temperatures.Length > 0 ? temperatures : "no temperature")}.";
    }

    private static string Best(ShotListAnswer answer, string which) =>
        answer.Additions.Count == 0
            ? ""
            : $"{which} would be {Frames(answer.Additions[0].What)} "
                + $"({Plain.Duration(answer.Additions[0].Seconds)}): {Gain(answer.Additions[0])}.";

    private static string Gain(ShotAddition addition) =>
        addition.Before is not { } before || addition.After is not { } after
            ? $"the {Words(addition.Quantity)} becomes measurable"
            : $"the uncertainty of the {Words(addition.Quantity)} should shrink by "
                + $"{Plain.Percent(addition.Reduction)}, from ±{Plain.Number(before, 2)} to ±{Plain.Number(after, 2)} "
                + QuantityText.Unit(addition.Unit);

    private static string Words(string quantity) =>
        quantity switch
        {
            QuantityNames.ReadNoise => "read noise of one pixel",
            QuantityNames.DarkCurrent => "dark current at that temperature",
            QuantityNames.DoublingTemperature => "doubling temperature",
            _ => quantity,
        };
}
