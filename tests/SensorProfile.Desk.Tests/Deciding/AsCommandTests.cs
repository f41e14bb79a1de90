using System.Diagnostics;
using System.Text;
using System.Text.Json;
using SensorProfile.Cli;
using SensorProfile.Cli.Terminal;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Desk.Asking;
using SensorProfile.Desk.Deciding;
using SensorProfile.Desk.Tests.Running;
using SensorProfile.Reporting.Answers;

namespace SensorProfile.Desk.Tests.Deciding;

/// <summary>The line under an answer gives that answer.</summary>
public sealed class AsCommandTests(OpenDesk desk) : IClassFixture<OpenDesk>, IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void TheLineShownGivesTheSameJsonInAShell()
    {
        Directory.CreateDirectory(folder["my camera (2031)"]);
        TarnProfile.Write(folder["my camera (2031)/profile.json"]);
        NightForm form = new(desk.Door)
        {
            Exposure = 120,
            Sky = 0.3,
            Ambient = -8,
            Reach = 30,
            Loss = 2,
        };
        DeskReply shown = desk.Door.Ask(form.Setpoint(folder["my camera (2031)"], null), null, CancellationToken.None);
        string line = desk.Door.Line(shown.Arguments);
        Assert.StartsWith("sensorprofile setpoint ", line, StringComparison.Ordinal);
        (int code, string output) = Shell(line["sensorprofile".Length..] + " --json");
        Assert.Equal(shown.ExitCode, code);
        Assert.Equal(AnswerJson.Of(shown.Answer!), output);
    }

    /// <summary>The line as a shell reads it: quotes and all.</summary>
    private (int ExitCode, string Output) Shell(string arguments)
    {
        string program = Checkout.Built("src/SensorProfile.Cli", "sensorprofile.dll");
        ProcessStartInfo info = new("/bin/sh", ["-c", $"dotnet '{program}'{arguments}"])
        {
            WorkingDirectory = folder.Path,
            RedirectStandardOutput = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        info.Environment["XDG_CONFIG_HOME"] = folder[".config"];
        using Process process = Process.Start(info)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output);
    }

    public static TheoryData<int> Questions => [0, 1, 2, 3, 4];

    [Theory, MemberData(nameof(Questions))]
    public void EveryQuestionHasTheAnswerOfItsCommand(int question)
    {
        TarnProfile.Write(folder["profile.json"], TarnProfile.Mode(200));
        NightForm form = new(desk.Door)
        {
            Exposure = 60,
            Sky = 3,
            Lights = 60,
            Dithers = 12,
            Rejection = "winsorised",
            Ambient = 4.5,
            Uncooled = question == 4,
        };
        Profiles.Session.ModeSettings mode = TarnProfile.Mode(200).Settings;
        IReadOnlyList<string> asked = question switch
        {
            0 or 4 => form.Setpoint(folder.Path, mode),
            1 => form.Match(folder.Path, mode, -10.04),
            2 => form.Plan(folder.Path, mode, -10.04),
            _ => form.LightLength(folder.Path, -10.04),
        };
        DeskReply shown = desk.Door.Ask(asked, null, CancellationToken.None);
        Assert.NotNull(shown.Answer);
        using MemoryStream output = new();
        Session typed = OpenDesk.Quiet with { Results = new ResultStream(() => output, isTerminal: false) };
        int code = CommandLine.Run([.. asked, "--json"], typed);
        Assert.Equal(shown.ExitCode, code);
        string json = Encoding.UTF8.GetString(output.ToArray());
        Assert.Equal(AnswerJson.Of(shown.Answer), json);
        Assert.Equal(shown.Answer.Sentence, JsonDocument.Parse(json).RootElement.GetProperty("sentence").GetString());
    }

    [Fact]
    public void ATroubleIsSaidInOneLineAndNothingIsAnswered()
    {
        NightForm form = new(desk.Door);
        DeskReply reply = desk.Door.Ask(form.Setpoint(folder["nowhere"], null), null, CancellationToken.None);
        Assert.Null(reply.Answer);
        Assert.Equal(3, reply.ExitCode);
        Assert.Contains("there is no profile here", reply.Trouble, StringComparison.Ordinal);
    }
}
