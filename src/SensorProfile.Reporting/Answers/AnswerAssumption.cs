using System.Text.Json.Serialization;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers;

/// <summary>Where an assumption of an answer comes from.</summary>
internal enum AssumptionSource
{
    /// <summary>The command line.</summary>
    Option,

    /// <summary>The setup file.</summary>
    Setup,

    /// <summary>The profile.</summary>
    Profile,

    /// <summary>The program's own default: the user gave nothing.</summary>
    Default,
}

/// <summary>One thing that an answer rests on besides the measurements.</summary>
/// <param name="Name">As scripts know it: "sky", "acceptedLoss".</param>
/// <param name="Value">A number in the unit of the JSON contract, a word, or a list of either.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Text">As people read it: "accepted loss 5 %".</param>
internal sealed record AnswerAssumption(
    string Name,
    object? Value,
    AssumptionSource Source,
    [property: JsonIgnore] string Text
)
{
    /// <summary>An option that was given or left at its default.</summary>
    public static AnswerAssumption Option(string name, object? value, bool given, string text) =>
        new(name, value, given ? AssumptionSource.Option : AssumptionSource.Default, text);

    /// <summary>The sky, e-/px/s: a named one, or one given, estimated or measured on lights.</summary>
    public static AnswerAssumption Sky(SkyRate sky) =>
        Option("sky", sky.Rate.Value, !NamedSkies.All.Contains(sky), $"{sky.Name}, {SkyFields.Rate(sky)}");
}
