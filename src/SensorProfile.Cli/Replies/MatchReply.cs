using SensorProfile.Decisions;

namespace SensorProfile.Cli.Replies;

/// <summary>The answer of <c>darks match</c> for lights and darks on disk.</summary>
internal static class MatchReply
{
    public static Reply Of(MatchAnswer answer, SkyRate? sky, IReadOnlyList<Finding> frameFindings)
    {
        Reply reply = DecisionReply.Of("darks match", answer, JsonNodes.Field("matches", answer.Matches), JsonNodes.Field("sky", sky));
        return reply with
        {
            Tables = sky is null ? [Matches(answer)] : [Matches(answer), SkyFields.Assumptions([sky])],
            Findings = [.. answer.Findings, .. frameFindings],
        };
    }

    private static ReplyTable Matches(MatchAnswer answer) => new(
        "", ["lights", "darks", "verdict", ">loss", "reason"],
        [.. answer.Matches.Select(m => (IReadOnlyList<string>)
        [
            m.Lights, m.Darks ?? "none", m.Verdict.Replace('-', ' ') + (m.Scaled ? ", scaled" : ""), m.Loss is null ? "" : QuantityText.Of(m.Loss), m.Reason,
        ])]);
}
