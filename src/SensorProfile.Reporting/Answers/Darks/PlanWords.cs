using SensorProfile.Decisions.DarkCount;
using SensorProfile.Decisions.DarkPlan;
using SensorProfile.NoiseModel;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>A plan of darks in words.</summary>
internal static class PlanWords
{
    /// <summary>The words of a plan; its reason begins with the temperature where none was given.</summary>
    /// <param name="answer">The plan.</param>
    /// <param name="taken">The assumed temperature; null when one was given.</param>
    public static AnswerWords Phrase(PlanAnswer answer, AssumedTemperature? taken = null) =>
        new(
            Sentence(answer),
            (taken is null ? "" : $"No temperature was given: planned for {taken.Words}. ") + Reason(answer),
            answer.Verdict
        )
        {
            Cautions = answer.Cooled ? Cautions.Cooling : Cautions.NightDarks,
        };

    public static IReadOnlyList<string> RulesOfThumb(PlanAnswer answer) =>
        [
            "\"5-minute darks are typical\" (common practice, no source): the plan takes 300 s when no "
                + "lights are given, else the exposures of the lights.",
            "\"At least 20 darks\" (common practice, no source): "
                + $"{(answer.Masters.All(m => m.Frames <= 20) ? "more than enough here" : "not enough for every master here")}.",
        ];

    /// <summary>Which lights a master serves, and why it holds so many frames.</summary>
    public static string Reason(PlanAnswer answer, MasterPlan master)
    {
        string why = master.FewestForHits
            ? "the fewest that can show up a cosmic-ray hit"
            : $"fewer would cost more than {Plain.Percent(answer.Loss)}";
        long lights = (long)Math.Round(master.Lights);
        return $"Serves {(lights == 1 ? "1 light" : $"about {Plain.Whole(lights)} lights")} "
            + $"{Range(master.ServesFrom, master.ServesTo)}; {Plain.Whole(master.Frames)} frames: {why}"
            + (
                master.MismatchUse > 0.005
                    ? $"; the mismatch uses {Plain.Percent(master.MismatchUse)} of its limit."
                    : "."
            );
    }

    /// <summary>When to shoot a master without a cooler; empty with one.</summary>
    public static string When(MasterPlan master) =>
        master.When switch
        {
            null => "",
            MasterTime.EndOfNight => "end of the night, when the lights are done",
            _ =>
                $"whenever the sensor is near {Plain.Celsius(master.Temperature)}: between the lights, or in the evening "
                    + "of a warmer night",
        };

    /// <summary>Warnings about a plan.</summary>
    public static IEnumerable<Finding> Findings(PlanAnswer answer)
    {
        foreach (UnplannedLights lights in answer.Unplanned)
            yield return new Finding(
                FindingCodes.LightsNotPlanned,
                Severity.Warning,
                $"No master can be planned for {Plain.Whole(lights.Lights)} lights, {Where(lights)}. "
                    + lights.Refusal.Message
                    + (White(lights) ? "" : $" Such darks would be {SettlingWords.Phrase(lights.Settling)}.")
            );
        if (answer.SpreadDarks is { } darks)
            yield return new Finding(
                FindingCodes.MastersNotSure,
                Severity.Warning,
                "Which temperatures one master serves depends on how dark current spreads over the pixels; "
                    + $"{SettlingWords.Phrase([darks])} would show it: characterise again with them."
            );
        MasterPlan most = answer.Masters.MaxBy(m => m.Frames)!;
        if (most.Frames <= DarksPlan.PracticalFrames)
            yield break;
        DarkCountAnswer? stack = answer
            .Stacks.Where(s => s.Stack.ExposureSeconds == most.Exposure)
            .MaxBy(s => s.Quantities[QuantityNames.Darks]?.Value ?? 0);
        double? loss = stack?.Curve.FirstOrDefault(p => p.Darks == DarksPlan.PracticalFrames)?.Loss;
        yield return new Finding(
            FindingCodes.MoreDarksThanPractical,
            Severity.Warning,
            $"{Plain.Whole(most.Frames)} darks in one master ({Plain.Duration(most.Seconds)}) are more than most people take"
                + (
                    loss is double percent
                        ? $"; {Plain.Whole(DarksPlan.PracticalFrames)} of them cost this stack "
                            + $"{Plain.Percent(percent / 100)} instead of {Plain.Percent(answer.Loss)}"
                        : ""
                )
                + (answer.Saving is null ? "." : "; dithering averages down the noise of the master too.")
        );
    }

    private static string Sentence(PlanAnswer answer)
    {
        int masters = answer.Masters.Count;
        string shoot =
            $"Shoot {Plain.Whole(masters)} master dark{(masters == 1 ? At(answer.Masters[0]) : "s")}, "
            + $"{Plain.Whole(Frames(answer))} frames in all: {Plain.Duration(answer.Masters.Sum(m => m.Seconds))} and "
            + Plain.Bytes(answer.Masters.Sum(m => m.Bytes))
            + Dithered(answer);
        if (answer.Unplanned.Count > 0)
            return shoot + LeftOut(answer, white: false) + LeftOut(answer, white: true) + ".";
        return answer.SpreadDarks is null
            ? shoot + "."
            : $"Cannot tell how far one master serves; the best guess is: {char.ToLowerInvariant(shoot[0])}{shoot[1..]}.";
    }

    private static string LeftOut(PlanAnswer answer, bool white)
    {
        UnplannedLights[] lights = [.. answer.Unplanned.Where(u => White(u) == white)];
        if (lights.Length == 0)
            return "";
        string which = $"{Plain.Whole(lights.Sum(u => u.Lights))} lights ({string.Join(", ", lights.Select(Where))})";
        return white ? $"; {which} are white, and no dark can rescue them" : $"; cannot tell for {which}";
    }

    /// <summary>White lights are those that no added frames would settle.</summary>
    private static bool White(UnplannedLights lights) => lights.Settling.Count == 0;

    private static int Frames(PlanAnswer answer) => answer.Masters.Sum(m => m.Frames);

    private static string At(MasterPlan master) =>
        $" of {Plain.Seconds(master.Exposure)} at {Plain.Celsius(master.Temperature)}";

    private static string Where(UnplannedLights lights) =>
        $"{Plain.Seconds(lights.Exposure)} {Range(lights.From, lights.To)}";

    private static string Reason(PlanAnswer answer)
    {
        MasterPlan? last = answer.Masters.LastOrDefault(m => m.When == MasterTime.EndOfNight);
        string fewest =
            "These are the fewest frames that keep every planned light "
            + $"{(answer.Unplanned.Count > 0 ? "that the profile reaches " : "")}within "
            + $"{Plain.Percent(answer.Loss)}, mismatch and noise of the darks together.";
        string cover =
            answer.CoverMasters < answer.Masters.Count
                ? $" With {Plain.Whole(answer.CoverMasters)} masters instead of {Plain.Whole(answer.Masters.Count)} it "
                    + $"would take {Plain.Whole((long)answer.CoverFrames)} frames."
                : "";
        return fewest
            + cover
            + (
                last is null
                    ? ""
                    : $" Shoot the {Plain.Celsius(last.Temperature)} master at the end of the night, when the sensor is that cold."
            );
    }

    /// <summary>What dithering saves, where a plan asks for more darks than most people take.</summary>
    private static string Dithered(PlanAnswer answer)
    {
        if (answer.Saving is not { } saving || saving.Frames >= Frames(answer))
            return "";
        string masters =
            saving.Masters == answer.Masters.Count
                ? ""
                : $" in {Plain.Whole(saving.Masters)} master{(saving.Masters == 1 ? "" : "s")}";
        return $"; dither over {Plain.Whole(saving.Positions)} positions and {Plain.Whole(saving.Frames)} frames{masters} will "
            + "do";
    }

    private static string Range(double low, double high) =>
        high - low < 0.05 ? $"at {Plain.Celsius(low)}" : $"between {Plain.Celsius(low)} and {Plain.Celsius(high)}";
}
