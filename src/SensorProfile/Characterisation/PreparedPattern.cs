using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Sums;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Characterisation;

/// <summary>Everything that the maps of a mode are made from.</summary>
/// <param name="Input">The frames and what is known of them; thresholds chosen.</param>
/// <param name="Levels">Levels of the temperatures that make a line.</param>
/// <param name="Prediction">How well darks can be computed; null when that was not tried.</param>
internal sealed record PreparedPattern(
    PatternInput Input,
    IReadOnlyDictionary<DarkSeries, SeriesLevels> Levels,
    DarkPredictionProfile? Prediction
)
{
    /// <summary>
    /// The same without the variances of the bias frames, which the maps do not need: saves the memory of one map of
    /// the whole sensor.
    /// </summary>
    public PreparedPattern With(PixelMoments? unlit) => this with { Input = Input with { Unlit = unlit } };
}
