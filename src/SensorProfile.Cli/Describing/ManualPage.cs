using System.Globalization;
using System.Text;
using SensorProfile.Cli.Terminal;

namespace SensorProfile.Cli.Describing;

/// <summary>The manual page, sensorprofile(1), in the man macros of roff.</summary>
internal static class ManualPage
{
    private const int Columns = 78;

    public static string Write(CommandModel model, string version, DateTimeOffset date)
    {
        StringBuilder page = new();
        page.Append(
            $"""
            .\" Made by: sensorprofile man
            .TH SENSORPROFILE 1 {date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} "sensorprofile {Text(
                version
            )}" "User Commands"
            .SH NAME
            sensorprofile \- measure a camera sensor from its own frames
            .SH SYNOPSIS
            .B sensorprofile
            .I COMMAND
            .RI [ ARGUMENTS ]
            .RI [ OPTIONS ]
            .SH DESCRIPTION
            Measures read noise, gain, dark current, hot and flickering pixels and glow of
            a camera from bias, dark and flat frames, each number with its uncertainty, and
            answers how cold to run it, which darks to shoot, how far off they may be and
            whether the sensor is ageing.
            Frames are only ever read.
            Results go to standard output, everything else to standard error.
            .SH COMMANDS

            """.ReplaceLineEndings(
                "\n"
            )
        );
        foreach (CommandShape command in model.Runnable)
            Append(page, command);
        page.Append(
            $"""
            .SH EXIT STATUS
            .TP
            .B {ExitCodes.Answered}
            Answered.
            .TP
            .B {ExitCodes.CannotTell}
            The answer is "cannot tell", or a measurement that was asked for could not be
            made; the reasons are printed.
            .TP
            .B {ExitCodes.WrongCommandLine}
            The command line is wrong.
            .TP
            .B {ExitCodes.UnreadableInput}
            An input cannot be read.
            .TP
            .B {ExitCodes.UnwritableOutput}
            An output cannot be written.
            .TP
            .B {ExitCodes.ProgramFault}
            A fault of the program.
            .TP
            .B {ExitCodes.Interrupted}
            Interrupted; nothing half\-written is left under its final name.
            .SH ENVIRONMENT
            .TP
            .B COLUMNS
            Width of what is printed.
            .TP
            .B NO_COLOR
            Prints without colours.
            .TP
            .B {Text(Letters.Variable)}
            Set to anything, prints texts in ASCII (+/\- and ^2), for fonts that lack the signs;
            JSON and files stay as they are.
            .TP
            .B SOURCE_DATE_EPOCH
            Seconds since 1970: the date that results carry, to make them again byte by byte.
            .TP
            .B XDG_CONFIG_HOME
            Where your setup is looked for, in a folder sensorprofile.

            """.ReplaceLineEndings("\n")
        );
        return page.ToString();
    }

    private static void Append(StringBuilder page, CommandShape command)
    {
        page.Append($".SS sensorprofile {Text(command.Name)}");
        foreach (ParameterShape argument in command.Arguments)
            page.Append($" {Text(Shown(argument))}");
        page.Append($" [options]\n{Lines(command.Description)}");
        foreach (ParameterShape argument in command.Arguments)
            page.Append($".TP\n.I {Text(argument.Value!)}\n{Lines(argument.Description)}");
        foreach (ParameterShape option in command.Options)
        {
            string value = option.Value is null ? "" : $" \" \" \\fI{Text(option.Value)}\\fR";
            page.Append(
                $".TP\n.BR {string.Join(" \", \" ", option.Names.Select(Text))}{value}\n{Lines(option.Description)}"
            );
        }
        page.Append(command.Examples.Count == 1 ? ".PP\nExample:\n" : ".PP\nExamples:\n").Append(".PP\n.nf\n.RS\n");
        foreach (string[] example in command.Examples)
            page.Append(Text("sensorprofile " + string.Join(' ', example))).Append('\n');
        page.Append(".RE\n.fi\n");
    }

    private static string Shown(ParameterShape argument) =>
        (argument.IsRequired ? argument.Value! : $"[{argument.Value}]") + (argument.Repeats ? " ..." : "");

    /// <summary>Running text in lines of 78 columns; a point or an apostrophe in front would be a request.</summary>
    private static string Lines(string text)
    {
        StringBuilder lines = new();
        int column = 0;
        foreach (string word in Text(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            bool begins = column == 0 || column + word.Length >= Columns;
            if (begins)
                lines.Append(column == 0 ? "" : "\n").Append(word[0] is '.' or '\'' ? @"\&" : "");
            else
                lines.Append(' ');
            lines.Append(word);
            column = begins ? word.Length : column + 1 + word.Length;
        }
        return lines.Append('\n').ToString();
    }

    private static string Text(string text) =>
        text.ReplaceLineEndings(" ")
            .Replace(@"\", @"\e", StringComparison.Ordinal)
            .Replace("-", @"\-", StringComparison.Ordinal);
}
