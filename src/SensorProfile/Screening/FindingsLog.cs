using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Screening;

/// <summary>Collects rejected frames and findings during a characterisation.</summary>
internal sealed class FindingsLog
{
    private readonly List<RejectedFile> files = [];
    private readonly List<(string? Mode, Finding Finding)> findings = [];
    private readonly HashSet<string> measured = new(StringComparer.Ordinal);

    /// <summary>Rejected files, in order of appearance.</summary>
    public IReadOnlyList<RejectedFile> Files => files;

    /// <summary>The mode being measured; findings added from now on concern it.</summary>
    public string? Mode
    {
        get;
        set
        {
            field = value;
            if (value is not null)
                measured.Add(value);
        }
    }

    /// <summary>
    /// Findings in order of appearance; one shared by several modes is reported once, with their names.
    /// </summary>
    public IReadOnlyList<Finding> Findings =>
        [
            .. findings
                .GroupBy(f => (f.Finding.Code, f.Finding.Severity, f.Finding.Message))
                .Select(same => Together([.. same])),
        ];

    /// <summary>Whether the mode being measured has a finding with this code.</summary>
    public bool Has(string code) => findings.Exists(f => f.Mode == Mode && f.Finding.Code == code);

    /// <summary>Rejects frames, with one finding for all of them.</summary>
    public void LeaveOut(string code, string finding, IEnumerable<(Frame Frame, string Reason)> frames)
    {
        (Frame Frame, string Reason)[] all = [.. frames];
        if (all.Length == 0)
            return;
        files.AddRange(all.Select(f => new RejectedFile(f.Frame.Name, f.Reason)));
        Add(code, Severity.Warning, finding, [.. all.Select(f => f.Frame.Name)]);
    }

    /// <summary>Withdraws findings of the mode being measured that no longer hold.</summary>
    public void Withdraw(params IReadOnlyList<string> codes) =>
        findings.RemoveAll(f => f.Mode == Mode && codes.Contains(f.Finding.Code));

    /// <summary>Adds a finding.</summary>
    public void Add(string code, Severity severity, string message, IReadOnlyList<string>? frames = null) =>
        findings.Add((Mode, new(code, severity, message, frames ?? [])));

    /// <summary>Adds findings.</summary>
    public void Add(IEnumerable<Finding> more) => findings.AddRange(more.Select(f => (Mode, f)));

    private Finding Together((string? Mode, Finding Finding)[] same)
    {
        Finding first = same[0].Finding;
        string[] modes = [.. same.Select(f => f.Mode).OfType<string>().Distinct(StringComparer.Ordinal)];
        return first with
        {
            Message =
                measured.Count > 1 && modes.Length > 0
                    ? $"At {string.Join("; ", modes)}: {first.Message}"
                    : first.Message,
            Frames = [.. same.SelectMany(f => f.Finding.Frames).Distinct(StringComparer.Ordinal)],
        };
    }
}
