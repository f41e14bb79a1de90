using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Screening;

/// <summary>Frames left out on the way and what was found on it.</summary>
internal sealed class Rejections
{
    private readonly List<RejectedFile> files = [];
    private readonly List<Finding> findings = [];

    /// <summary>Files left out, in the order they were met.</summary>
    public IReadOnlyList<RejectedFile> Files => files;

    /// <summary>Findings, in the order they were met.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    /// <summary>Leaves frames out, with one finding for all of them.</summary>
    public void LeaveOut(string code, string finding, IEnumerable<(Frame Frame, string Reason)> frames)
    {
        (Frame Frame, string Reason)[] all = [.. frames];
        if (all.Length == 0)
            return;
        files.AddRange(all.Select(f => new RejectedFile(f.Frame.Name, f.Reason)));
        findings.Add(new(code, Severity.Warning, finding, [.. all.Select(f => f.Frame.Name)]));
    }

    /// <summary>Adds a finding.</summary>
    public void Add(string code, Severity severity, string message, IReadOnlyList<string>? frames = null) =>
        findings.Add(new(code, severity, message, frames ?? []));

    /// <summary>Adds findings.</summary>
    public void Add(IEnumerable<Finding> more) => findings.AddRange(more);
}
