using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Reporting.Answers;

/// <summary>A number of an answer.</summary>
/// <param name="Name">As scripts know it: "setpointTypical".</param>
/// <param name="Label">As people read it: "typical pixel".</param>
/// <param name="Value">Null when there is none; a finding says why.</param>
internal sealed record AnswerQuantity(string Name, string Label, Measurement? Value)
{
    /// <summary>Ends of the 95 % interval, where one was worked out.</summary>
    public Interval? Interval { get; init; }

    /// <summary>Printed instead of the number when there is none: "no limit", "not measured".</summary>
    public string Absent { get; init; } = QuantityText.NotMeasured;
}
