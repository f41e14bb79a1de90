namespace SensorProfile.Decisions.Shots;

/// <summary>The uncertainty that a session should reach, from its design and a typical camera.</summary>
/// <param name="Quantity">readNoise (of one pixel), gain, darkCurrent (at the temperature where it is known best) or
/// doublingTemperature.</param>
/// <param name="Now">Standard uncertainty with the frames that exist; null when it cannot be measured with
/// them.</param>
/// <param name="WithShots">Standard uncertainty with the listed frames too; null when it cannot be measured even
/// then.</param>
/// <param name="Unit">Unit of both; % is relative.</param>
internal sealed record ShotExpectation(string Quantity, double? Now, double? WithShots, string Unit)
{
    internal static IReadOnlyList<ShotExpectation> Predict(SessionDesign now, SessionDesign with) =>
        [
            new(QuantityNames.ReadNoise, now.ReadNoise, with.ReadNoise, "%"),
            new(QuantityNames.Gain, now.Gain, with.Gain, "%"),
            new(QuantityNames.DarkCurrent, now.DarkCurrent, with.DarkCurrent, "e-/px/s"),
            new(QuantityNames.DoublingTemperature, now.DoublingTemperature, with.DoublingTemperature, "°C"),
        ];
}
