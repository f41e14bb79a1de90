using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Printing;
using SensorProfile.NoiseModel;
using SensorProfile.Reporting.Answers;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Commands;

/// <summary>A command that answers a question, as text or as JSON.</summary>
internal abstract class AnswerCommand<TSettings> : Command<TSettings>
    where TSettings : AnswerSettings
{
    /// <summary>Its name as typed: "darks match".</summary>
    protected abstract string Name { get; }

    public sealed override int Execute(CommandContext context, TSettings settings, CancellationToken cancellationToken)
    {
        Session session = (Session)context.Data!;
        AnswerDocument reply = session.Remembered.Mark(AnswerOrRefuse(session, settings));
        if (session.Taker is { } taker)
            taker(reply);
        else if (settings.Json)
            session.Results.WriteRaw(AnswerJson.Of(reply));
        else
            AnswerPrinter.Print(reply, session.Results, settings.Explain);
        return reply.CannotTell ? ExitCodes.CannotTell : ExitCodes.Answered;
    }

    protected abstract AnswerDocument Answer(Session session, TSettings settings);

    private AnswerDocument AnswerOrRefuse(Session session, TSettings settings)
    {
        try
        {
            return Answer(session, settings);
        }
        catch (DecisionRefusedException refusal)
        {
            return refusal.Kind == RefusalKind.BadArgument
                ? throw CommandFailure.WrongCommandLine(refusal.Message)
                : DecisionDocument.CannotTell(Name, refusal);
        }
    }
}
