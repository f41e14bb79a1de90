using SensorProfile.NoiseModel.Camera;

namespace SensorProfile.NoiseModel.Answers;

/// <summary>Collects the quantities and intervals of an answer in the order they are printed.</summary>
internal sealed class AnswerQuantities
{
    internal OrderedDictionary<string, Measurement?> Quantities { get; } = [];

    internal OrderedDictionary<string, Interval> Intervals { get; } = [];

    internal void Add(string name, double? value, string unit, string method, UncertaintyDraws.Spread spread = default)
    {
        Quantities[name] =
            value is double v && double.IsFinite(v)
                ? new Measurement(
                    v,
                    spread.StandardDeviation,
                    unit,
                    spread.Count > 0 ? spread.Count : UncertaintyDraws.Draws,
                    method
                )
                : null;
        if (spread.Solved > 0)
            Intervals[name] = new Interval(spread.Low, spread.High);
    }
}
