using System.Text.RegularExpressions;
using SensorProfile.Cli.Describing;
using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests.Describing;

/// <summary>What completion and manual page are made from is the command line itself.</summary>
public sealed class CommandModelTests
{
    private static readonly string[] onlyTheUserKnows =
    [
        "C",
        "E",
        "K",
        "M",
        "MAG",
        "N",
        "NAME",
        "NAME=NM",
        "NM",
        "NXN",
        "PCT",
        "PX",
        "S",
        "SETTING",
        "SHARE",
        "UM",
        "WXH",
    ];

    private static CommandModel Model { get; } = CommandModel.Read(Session.OnThisTerminal(CancellationToken.None));

    [Fact]
    public void HoldsEveryCommandWithItsExamples()
    {
        Assert.Equal(CommandList.Names.Order(), Model.Runnable.Select(c => c.Name).Order());
        Assert.Equal(
            CommandList.Examples.Select(e => string.Join(' ', e)).Order(),
            Model.Runnable.SelectMany(c => c.Examples).Select(e => string.Join(' ', e)).Order()
        );
    }

    public static TheoryData<string> EveryCommand => [.. CommandList.Names];

    [Theory, MemberData(nameof(EveryCommand))]
    public void HoldsTheOptionsThatTheHelpShows(string name)
    {
        string help = new SensorProfileCommand().Run([.. name.Split(' '), "--help"]).Expect(0).Output;
        CommandShape command = Model.Runnable.Single(c => c.Name == name);
        // "    -h, --help   …" or "        --sky <E>   …"; what begins further right is description
        IEnumerable<string> shown = Regex
            .Matches(
                help[help.IndexOf("OPTIONS:", StringComparison.Ordinal)..],
                "^ {4}(?:-., | {4})(--[a-z-]+)",
                RegexOptions.Multiline
            )
            .Select(line => line.Groups[1].Value);
        Assert.Equal(shown.Order(), command.Options.Select(o => o.Names[^1]).Order());
    }

    /// <summary>A new kind of value must be told apart: a file, a folder, words, or nothing that a shell could offer.</summary>
    [Fact]
    public void EveryValueIsFilesFoldersWordsOrTheUsersOwn() =>
        Assert.All(Model.Runnable.SelectMany(c => c.Options.Concat(c.Arguments)).Where(p => p.Value is not null), p =>
        {
            if (p.Completes == Completes.Nothing)
                Assert.Contains(p.Value, onlyTheUserKnows);
        });

    [Fact]
    public void WordsAreThoseThatTheCommandTakes()
    {
        ParameterShape rejection = Option("darks match", "--rejection");
        Assert.Equal(["none", "sigma-clip", "winsorised", "median"], rejection.Words);
        Assert.Equal(["headers", "hot-pixels"], Option("characterise", "--temperatures").Words);
        Assert.Equal(
            ["bash", "zsh", "fish", "powershell"],
            Model.Runnable.Single(c => c.Name == "completion").Arguments[0].Words
        );
        Assert.Contains("predict", Model.Runnable.Single(c => c.Name == "schema").Arguments[0].Words);
    }

    [Fact]
    public void AnUnknownShellIsNamed() =>
        Assert.Equal(
            "sensorprofile: completion knows bash, zsh, fish, powershell, not tcsh. Try: sensorprofile completion --help\n",
            new SensorProfileCommand().Run("completion", "tcsh").Expect(ExitCodes.WrongCommandLine).Error
        );

    /// <summary>A quotation mark of typography would end a string of PowerShell.</summary>
    [Theory]
    [InlineData('‘')]
    [InlineData('’')]
    [InlineData('“')]
    [InlineData('”')]
    public void NoDescriptionHasWhatAShellTakesForAQuote(char quote) =>
        Assert.All(
            Model
                .Runnable.SelectMany(c => c.Options)
                .Select(o => o.Description)
                .Concat(Model.Runnable.Select(c => c.Description)),
            text => Assert.DoesNotContain(quote, text)
        );

    private static ParameterShape Option(string command, string name) =>
        Model.Runnable.Single(c => c.Name == command).Options.Single(o => o.Names.Contains(name));
}
