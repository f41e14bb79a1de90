using System.Text.Json.Serialization;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Reporting.Answers;

/// <summary>Where something that an answer assumes comes from.</summary>
internal enum AssumptionSource
{
    /// <summary>The command line.</summary>
    Option,

    /// <summary>The setup file.</summary>
    Setup,

    /// <summary>The profile.</summary>
    Profile,

    /// <summary>Nobody said: the program's own default.</summary>
    Default,
}

/// <summary>One thing that an answer rests on besides the measurements.</summary>
/// <param name="Name">As scripts know it: "sky", "acceptedLoss".</param>
/// <param name="Value">A number in the unit that the contract names, a word, or a list of them.</param>
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

    /// <summary>The sky, e-/px/s: the default one, or one that was given, estimated or measured on lights.</summary>
    public static AnswerAssumption Sky(SkyRate sky) =>
        Option("sky", sky.Rate.Value, sky != NamedSkies.Default, $"{sky.Name}, {SkyFields.Rate(sky)}");
}
