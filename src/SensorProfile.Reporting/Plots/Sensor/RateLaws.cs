using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Reporting.Plots.Sensor;

/// <summary>
/// The temperature laws of a profile, ready to be drawn. A law that this version does not know is left out, not
/// guessed.
/// </summary>
internal sealed class RateLaws
{
    private readonly Dictionary<DarkCurrentModel, DarkCurrentLaw> _laws = [];
    private readonly DarkCurrentPredictor? _predictor;

    /// <summary>The laws of a profile.</summary>
    public RateLaws(DarkCurrentProfile dark)
    {
        if (dark.ReferenceTemperature is not { } reference)
            return;
        foreach (DarkCurrentModel model in dark.Models)
        {
            if (Known(() => DarkCurrentLaw.FromModel(model, reference)) is { } law)
                _laws[model] = law;
        }
        _predictor = Known(() => DarkCurrentPredictor.FromProfile(dark));
    }

    /// <summary>The laws that can be drawn.</summary>
    public IEnumerable<DarkCurrentModel> Models => _laws.Keys;

    /// <summary>Whether the chosen law can be drawn.</summary>
    public bool CanPredict => _predictor is not null;

    /// <summary>Rate of one law, e-/px/s.</summary>
    public Measurement Rate(DarkCurrentModel model, double temperature) => _laws[model].RateAt(temperature);

    /// <summary>
    /// Rate of the chosen law, its uncertainty including the spread between plausible laws, e-/px/s; null when there is
    /// none.
    /// </summary>
    public Measurement? Predicted(double temperature) => _predictor?.At(temperature).Rate;

    private static T? Known<T>(Func<T?> restore)
        where T : class
    {
        try
        {
            return restore();
        }
        catch (ArgumentException)
        {
            return null; // a law of a later version, or a record that was edited by hand
        }
    }
}
