using System.Diagnostics;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Describing;

/// <summary>The scripts in the shells they are for: what is offered at the end of a line.</summary>
/// <remarks>
/// bash is asked through its completion function, zsh through a terminal of its own (zpty) with the function that adds
/// matches listened to (typing begins when its line editor says that it listens), fish through <c>complete -C</c>,
/// PowerShell through <c>TabExpansion2</c>.
/// </remarks>
public sealed class ShellCompletionTests
{
    private const string Bash = """
        source ./script
        read -ra COMP_WORDS <<<"$1"
        [[ $1 == *" " ]] && COMP_WORDS+=("")
        [[ $1 == *=* ]] && read -ra COMP_WORDS <<<"${1//=/ = }"
        COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
        _sensorprofile
        printf '%s\n' "${COMPREPLY[@]}"
        """;

    private const string Zsh = """
        zmodload zsh/zpty
        zpty shell zsh -f -i
        expect() { local text; while zpty -r shell text; do [[ $text == *$1* ]] && break; done }
        zpty -w shell 'PS1=; autoload -Uz compinit; compinit -u -D; source ./script'
        zpty -w shell 'compadd() {
            [[ ${@[1,(i)(-|--)]} == *-(O|A|D)\ * ]] && { builtin compadd "$@"; return $?; }
            local -a hits; builtin compadd -A hits "$@"; local h; for h in $hits; print -r -- "<$h>"
            builtin compadd "$@" }'
        zpty -w shell 'ask() { print "begin"; _main_complete; print "end"; exit }'
        zpty -w shell 'zle -C ask complete-word ask; bindkey "^I" ask'
        zpty -w shell 'zle-line-init() { print ready"-"now }; zle -N zle-line-init'
        expect ready-now
        zpty -w -n shell "$1"$'\t'
        while zpty -r shell text; do print -r -- $text; [[ $text == *end* ]] && break; done
        """;

    private const string PowerShell = """
        . ./script
        foreach ($line in $args) {
            (TabExpansion2 $line $line.Length).CompletionMatches | ForEach-Object { $_.CompletionText }
            '=='
        }
        """;

    private static readonly string[] everyone = ["demo", "shots", "darks", "schema", "completion", "man"];

    /// <summary>What is typed, some of what is offered, and what is not.</summary>
    public static TheoryData<string, string[], string[]> Lines =>
        new()
        {
            { "sensorprofile ", everyone, ["plan", "match"] },
            { "sensorprofile sh", ["shots"], ["demo", "setup"] },
            { "sensorprofile darks ", ["plan", "match", "check", "predict"], ["demo", "flats"] },
            { "sensorprofile darks match --rej", ["--rejection", "--rejects"], ["--json"] },
            { "sensorprofile darks match --rejection ", ["none", "sigma-clip", "winsorised", "median"], ["--json"] },
            { "sensorprofile characterise --temperatures h", ["headers", "hot-pixels"], [] },
            { "sensorprofile completion ", ["bash", "zsh", "fish", "powershell"], [] },
            { "sensorprofile schema dar", ["darks"], ["setup"] },
            { "sensorprofile setpoint my-", ["my-profile.json"], ["--json"] },
            { "sensorprofile survey night --table ", ["my-profile.json"], [] },
            { "sensorprofile characterise night --out my", ["my-folder"], ["my-profile.json"] },
        };

    [NeedsProgramTheory("bash"), MemberData(nameof(Lines))]
    public void BashOffers(string typed, string[] offered, string[] not) =>
        Check(Ask("bash", Bash, "bash", "--norc", "./ask", typed), offered, not);

    [NeedsProgramTheory("bash")]
    [InlineData("sensorprofile darks match --rejection=w", "winsorised")]
    [InlineData("sensorprofile darks match --rejection=", "sigma-clip")]
    public void BashOffersBehindAnEqualsSign(string typed, string offered) =>
        Check(Ask("bash", Bash, "bash", "--norc", "./ask", typed), [offered], ["--json"]);

    [NeedsProgramTheory("zsh"), MemberData(nameof(Lines))]
    public void ZshOffers(string typed, string[] offered, string[] not) =>
        Check(Ask("zsh", Zsh, "zsh", "-f", "./ask", typed), offered, not);

    [NeedsProgramTheory("fish"), MemberData(nameof(Lines))]
    public void FishOffers(string typed, string[] offered, string[] not) =>
        Check(
            Ask("fish", "source ./script; complete -C $argv[1]", "fish", "--no-config", "./ask", typed),
            offered,
            not
        );

    /// <summary>All lines in one process, which takes seconds to start.</summary>
    [NeedsProgramTheory("pwsh")]
    [InlineData("-File")]
    public void PowerShellOffers(string how)
    {
        object[][] lines = [.. Lines];
        string[] typed = [.. lines.Select(line => (string)line[0])];
        string[] answers = Ask(
            "powershell",
            PowerShell,
            "pwsh",
            ["-NoProfile", "-NonInteractive", how, "./ask.ps1", .. typed]
        );
        int from = 0;
        foreach (object[] line in lines)
        {
            int to = Array.IndexOf(answers, "==", from);
            Check(answers[from..to], (string[])line[1], (string[])line[2]);
            from = to + 1;
        }
    }

    private static void Check(string[] answer, string[] offered, string[] not)
    {
        Assert.Empty(offered.Except(answer));
        Assert.Empty(not.Intersect(answer));
    }

    /// <summary>The words offered, without folders' last slash and without descriptions.</summary>
    private static string[] Ask(string shell, string question, string program, params string[] arguments)
    {
        using TemporaryFolder folder = new();
        string script = new SensorProfileCommand().Run("completion", shell).Expect(0).Output;
        bool powerShell = shell == "powershell";
        File.WriteAllText(folder[powerShell ? "script.ps1" : "script"], script);
        File.WriteAllText(
            folder[powerShell ? "ask.ps1" : "ask"],
            powerShell ? question.Replace("./script", "./script.ps1", StringComparison.Ordinal) : question
        );
        File.WriteAllText(folder["my-profile.json"], "{}");
        Directory.CreateDirectory(folder["my-folder"]);
        ProcessStartInfo start = new(program, arguments)
        {
            WorkingDirectory = folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        start.Environment["HOME"] = folder.Path;
        start.Environment["LC_ALL"] = "C.UTF-8";
        start.Environment["TERM"] = "dumb";
        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(120_000), $"{program} did not end");
        Assert.Equal("", errors.Result);
        return
        [
            .. output
                .Split('\n')
                .Select(line =>
                    line.Split('\t')[0].Trim('\r', ' ', '<', '>').TrimEnd('/').TrimEnd(Path.DirectorySeparatorChar)
                )
                .Select(word => word.StartsWith("./", StringComparison.Ordinal) ? word[2..] : word),
        ];
    }
}
