using SensorProfile.Frames;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Screening;

/// <summary>Frames left out on the way and what was found on it.</summary>
internal sealed class FindingsLog
{
    private readonly List<RejectedFile> files = [];
    private readonly List<(string? Mode, Finding Finding)> findings = [];
    private readonly HashSet<string> measured = new(StringComparer.Ordinal);

    /// <summary>Files left out, in the order they were met.</summary>
    public IReadOnlyList<RejectedFile> Files => files;

    /// <summary>The mode that is being measured; findings added from here on are about it.</summary>
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
    /// Findings, in the order they were met; what was found alike in several modes is said once, with their names.
    /// </summary>
    public IReadOnlyList<Finding> Findings =>
        [
            .. findings
                .GroupBy(f => (f.Finding.Code, f.Finding.Severity, f.Finding.Message))
                .Select(same => Together([.. same])),
        ];

    /// <summary>Whether such a finding was added for the mode that is being measured.</summary>
    public bool Has(string code) => findings.Exists(f => f.Mode == Mode && f.Finding.Code == code);

    /// <summary>Leaves frames out, with one finding for all of them.</summary>
    public void LeaveOut(string code, string finding, IEnumerable<(Frame Frame, string Reason)> frames)
    {
        (Frame Frame, string Reason)[] all = [.. frames];
        if (all.Length == 0)
            return;
        files.AddRange(all.Select(f => new RejectedFile(f.Frame.Name, f.Reason)));
        Add(code, Severity.Warning, finding, [.. all.Select(f => f.Frame.Name)]);
    }

    /// <summary>Takes back what was found of the mode that is being measured and no longer holds.</summary>
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
