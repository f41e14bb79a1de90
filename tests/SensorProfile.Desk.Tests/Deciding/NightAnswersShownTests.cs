using SensorProfile.Desk.Deciding;
using SensorProfile.Desk.Tests.Running;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Desk.Tests.Deciding;

public class NightAnswersShownTests
{
    // The settings were those of the first question for as long as answers were on their way.
    [Fact]
    public async Task SettingsChangedWhileAnswersComeAreThoseOfTheLastAnswers()
    {
        AnsweringDoor door = new();
        TaskCompletionSource done = new();
        NightAnswersShown? answers = null;
        answers = new NightAnswersShown(door, new NightForm(door), () =>
        {
            if (answers!.Answered == 2)
                done.TrySetResult();
        });
        door.DuringTheFirst = () => answers.Ask("camera", new ModeSettings { Gain = 200 });
        answers.Ask("camera", new ModeSettings { Gain = 100 });
        await done.Task.WaitAsync(TimeSpan.FromSeconds(20));
        string[] asked = [.. door.Asked];
        Assert.Contains("--gain=100", asked[0], StringComparison.Ordinal);
        // the first round was overtaken: five questions follow, all but that of the exposure (of all settings) with the new one
        Assert.Equal(6, asked.Length);
        Assert.Equal(4, asked.Skip(1).Count(a => a.Contains("--gain=200", StringComparison.Ordinal)));
        Assert.DoesNotContain(asked.Skip(1), a => a.Contains("--gain=100", StringComparison.Ordinal));
    }

    [Fact]
    public void ASetupHasNoMoreDitherPositionsThanLights()
    {
        NightForm form = new(new AnsweringDoor()) { Lights = 5, Dithers = 10 };
        Assert.Contains("--dithers=5", form.Keep("camera"));
    }
}
