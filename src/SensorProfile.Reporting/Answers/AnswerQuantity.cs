using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>A number of an answer.</summary>
/// <param name="Name">The name for scripts: "setpointTypical".</param>
/// <param name="Label">The label for people: "typical pixel".</param>
/// <param name="Value">Null when there is none; a finding says why.</param>
internal sealed record AnswerQuantity(string Name, string Label, Measurement? Value)
{
    /// <summary>The 95 % interval, where one was computed.</summary>
    public Interval? Interval { get; init; }

    /// <summary>Printed instead of the number when there is none: "no limit", "not measured".</summary>
    public string Absent { get; init; } = QuantityText.NotMeasured;
}
