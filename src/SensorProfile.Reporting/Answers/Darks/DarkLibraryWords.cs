using SensorProfile.Decisions.DarkCount;
using SensorProfile.Drift.MasterDarks;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers.Darks;

/// <summary>A check of master darks in words.</summary>
internal static class DarkLibraryWords
{
    public static AnswerWords Phrase(DarkLibraryAnswer answer)
    {
        MasterVerdict[] retake = [.. answer.Masters.Where(m => m.Verdict == CheckVerdict.Retake)],
            unknown = [.. answer.Masters.Where(m => m.Verdict == CheckVerdict.CannotTell)];
        MasterVerdict shown = retake.FirstOrDefault()
            ?? unknown.FirstOrDefault()
            ?? answer.Masters.MaxBy(m => m.Loss?.Value ?? 0)!;
        return new AnswerWords(
            Sentence(answer.Masters.Count, retake, unknown) + BringBack(answer.Masters),
            $"{Path.GetFileName(shown.File)}: {MasterWords.Reason(answer, shown)}",
            answer.Library
        );
    }

    public static IReadOnlyList<string> RulesOfThumb { get; } =
    [
        "\"Renew the dark library yearly\" (common practice, no source): the answer above comes from "
            + "the frames, not from their age; age alone is a reason to check, never to throw darks away.",
    ];

    /// <summary>Warnings of the check, besides those from reading the frames.</summary>
    public static IEnumerable<Finding> Findings(DarkLibraryAnswer answer)
    {
        foreach (Finding finding in answer.Masters.SelectMany(MasterWords.Findings))
            yield return finding;
        if (answer.GainFrom == GainSource.Unknown)
            yield return new Finding(
                FindingCodes.GainUnknown,
                Severity.Note,
                "Without a gain (no profile, or none in it) residuals are in ADU and the noise of the sky is not "
                    + "counted, which makes the check stricter. Give the camera's profile."
            );
        if (answer.GainFrom == GainSource.HotPixels)
            yield return new Finding(
                FindingCodes.GainFromHotPixels,
                Severity.Note,
                $"No profile gave a gain: {QuantityText.Of(answer.Gain)} was taken from the shot noise of the hot pixels in "
                    + "the fresh darks, good enough to count the sky. Give the camera's profile for a better one."
            );
        if (answer.Stack.Sky is null && answer.Gain is not null)
            yield return DarkCountAdvice.SkyAssumed(NamedSkies.Default);
    }

    /// <summary>Darks to shoot, and why so many.</summary>
    public static string Shoot(DarkLibraryAnswer answer, DarksToShoot darks)
    {
        string at = MasterWords.Conditions(darks.Exposure, darks.Temperature);
        if (darks.Settings is { } settings and not { Iso: null, Gain: null })
            at += ", " + ModeChoice.Name(settings);
        return darks.Retake
            ? $"{Plain.Whole(darks.Frames)} darks at {at}: their own noise then adds no more than "
                + $"{Plain.Percent(answer.Stack.Limits.NoiseLoss)} to {MasterWords.Stack(answer.Stack)}"
            : $"fresh darks at {at} to check the master with, twice as many where it was too close to tell";
    }

    /// <summary>A misaligned master does harm as it stands, even if it is otherwise good.</summary>
    private static string BringBack(IReadOnlyList<MasterVerdict> verdicts)
    {
        MasterVerdict[] turned = [.. verdicts.Where(v => v.Realigned is not null && v.Verdict == CheckVerdict.Keep)];
        return turned.Length switch
        {
            0 => "",
            1 when turned[0].OtherSize =>
                $" {Path.GetFileName(turned[0].File)} is {turned[0].Realigned}: it serves lights of its own size only.",
            1 => $" Realign {Path.GetFileName(turned[0].File)} before you use it: it is {turned[0].Realigned}.",
            _ =>
                $" {Plain.Whole(turned.Length)} of those to keep are turned, shifted, cropped or binned relative to the fresh darks: "
                    + "realign them before you use them.",
        };
    }

    private static string Sentence(int all, MasterVerdict[] retake, MasterVerdict[] unknown)
    {
        string Names(MasterVerdict[] some) =>
            string.Join(", ", some.Take(4).Select(m => Path.GetFileName(m.File)))
            + (some.Length > 4 ? $" and {Plain.Whole(some.Length - 4)} more" : "");
        string open = unknown.Length > 0 ? $" Cannot tell for {Names(unknown)}." : "";
        if (retake.Length > 0)
            return "Retake "
                + $"{(retake.Length == all && all > 1 ? "all " + Plain.Whole(all) + " masters" : Names(retake))}.{open}";
        return unknown.Length == 0
                ? $"Keep {(all == 1 ? "this master" : $"all {Plain.Whole(all)} masters")}: fresh darks show no residual "
                    + "that your stack would notice."
            : unknown.Length == all ? $"Cannot tell whether {Names(unknown)} {(all == 1 ? "is" : "are")} still good."
            : $"{open.TrimStart()} Keep the rest.";
    }
}
