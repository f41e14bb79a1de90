using SensorProfile.Desk.Asking;
using SensorProfile.Profiles.Session;
using SensorProfile.Reporting.Views;

namespace SensorProfile.Desk.Deciding;

/// <summary>The questions of the Decide page.</summary>
internal enum NightQuestion
{
    HowCold,
    HowNear,
    HowMany,
    HowLong,
    HowManyFlats,
}

/// <summary>Answers that follow the sliders: the latest question wins, and work on an overtaken one is
/// abandoned.</summary>
/// <param name="door">The program.</param>
/// <param name="form">The sliders.</param>
/// <param name="changed">Called from any thread when an answer has arrived.</param>
internal sealed class NightAnswersShown(IDeskDoor door, NightForm form, Action changed)
{
    private readonly Lock gate = new();
    private readonly Dictionary<NightQuestion, DeskReply> replies = [];
    private (string Profile, ModeSettings? Mode) camera;
    private int wanted;
    private bool working;

    /// <summary>The number of the latest change that all answers reflect.</summary>
    public int Answered { get; private set; }

    /// <summary>The number of the latest change that the first answer reflects.</summary>
    public int FirstAnswered { get; private set; }

    /// <summary>Whether answers are still being worked out.</summary>
    public bool IsWorking
    {
        get
        {
            lock (gate)
                return working;
        }
    }

    /// <summary>The answer to a question; null before there is one.</summary>
    public DeskReply? this[NightQuestion question]
    {
        get
        {
            lock (gate)
                return replies.GetValueOrDefault(question);
        }
    }

    /// <summary>Asks all questions again.</summary>
    public void Ask(string profile, ModeSettings? mode)
    {
        lock (gate)
        {
            wanted++;
            camera = (profile, mode);
            if (working)
                return;
            working = true;
        }
        _ = Task.Run(Work);
    }

    private void Work()
    {
        while (true)
        {
            int now;
            string profile;
            ModeSettings? mode;
            lock (gate)
                (now, (profile, mode)) = (wanted, camera);
            Put(NightQuestion.HowCold, form.Setpoint(profile, mode));
            FirstAnswered = now;
            changed();
            double? cold = this[NightQuestion.HowCold]
                ?.Answer?.Quantities.FirstOrDefault(q => q.Name == QuantityNames.Setpoint)
                ?.Value?.Value;
            (NightQuestion Question, IReadOnlyList<string> Arguments)[] rest =
            [
                (NightQuestion.HowNear, form.Match(profile, mode, cold)),
                (NightQuestion.HowMany, form.Plan(profile, mode, cold)),
                (NightQuestion.HowLong, form.LightLength(profile, cold)),
                (NightQuestion.HowManyFlats, form.Flats(profile, mode, cold)),
            ];
            foreach ((NightQuestion question, IReadOnlyList<string> arguments) in rest)
            {
                if (IsOvertaken(now))
                    break;
                Put(question, arguments);
                changed();
            }
            lock (gate)
            {
                if (wanted == now)
                {
                    working = false;
                    Answered = now;
                    break;
                }
            }
        }
        changed();
    }

    private bool IsOvertaken(int now)
    {
        lock (gate)
            return wanted != now;
    }

    private void Put(NightQuestion question, IReadOnlyList<string> arguments)
    {
        DeskReply reply = door.Ask(arguments, null, CancellationToken.None);
        if (reply.Answer is { } answer)
            reply = reply with { Drawing = AnswerFigure.Html(answer, 1 + (int)question) };
        lock (gate)
            replies[question] = reply;
    }
}
