using SensorProfile.Cli.Replies;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary>A command that answers a question with a reply: text, or JSON when asked.</summary>
internal abstract class AnswerCommand<TSettings> : Command<TSettings> where TSettings : AnswerSettings
{
    public sealed override int Execute(CommandContext context, TSettings settings)
    {
        Session session = (Session)context.Data!;
        Reply reply = Answer(session, settings);
        if (settings.Json) session.Results.WriteRaw(ReplyJson.Of(reply));
        else ReplyPrinter.Print(reply, session.Results);
        return reply.ExitCode;
    }

    protected abstract Reply Answer(Session session, TSettings settings);
}
