using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Frames;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Cli.Commands.Reading;

/// <summary>Keeps profiles in an archive for the years to come.</summary>
internal static class ArchiveKeeping
{
    /// <summary>Keeps the profiles and says so in the reply.</summary>
    /// <param name="archive">Folder of the archive.</param>
    /// <param name="profiles">What to keep.</param>
    /// <param name="reply">The answer so far.</param>
    /// <param name="next">What to type next.</param>
    public static AnswerDocument Keep(
        string archive,
        IReadOnlyList<ProfileOnDisk> profiles,
        AnswerDocument reply,
        string next
    )
    {
        List<Finding> findings = [];
        try
        {
            foreach (ProfileOnDisk profile in profiles)
                findings.AddRange(SensorArchive.Keep(archive, profile).Findings);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw CommandFailure.UnwritableOutput(problem.Message, problem);
        }
        return reply with
        {
            Findings = [.. reply.Findings, .. findings.Where(f => !reply.Findings.Any(r => r.Message == f.Message))],
            Lines =
            [
                .. reply.Lines,
                $"Kept in the archive {archive}: {Counted.Nouns(profiles.Count, "profile")}. {next}",
            ],
        };
    }
}
