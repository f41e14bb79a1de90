using SensorProfile.DarkCurrent.Laws;
using SensorProfile.Profiles.Darks;

namespace SensorProfile.Prediction;

/// <summary>The temperature laws of a profile as functions.</summary>
internal static class ProfileLaws
{
    /// <summary>
    /// Rate of the typical pixel against temperature, °C → e-/px/s: the selected law, else the first where a doubling
    /// temperature was measured; null when there is none.
    /// </summary>
    public static Func<double, double>? Typical(DarkCurrentProfile profile, double reference)
    {
        DarkCurrentModel? model = profile.Models.FirstOrDefault(m => m.Name == profile.Selected)
            ?? (profile.DoublingTemperature is not null && profile.Models.Count > 0 ? profile.Models[0] : null);
        if (model is null)
            return null;
        var law = DarkCurrentLaw.FromModel(model, reference);
        return law.RateAt(reference).Value > 0 ? t => law.RateAt(t).Value : null;
    }

    /// <summary>The same for the laws of single pixels: null when the selected law has a constant floor.</summary>
    public static Func<double, double>? Activation(DarkCurrentProfile profile, double reference) =>
        profile.Selected is { } name && !name.EndsWith("+floor", StringComparison.Ordinal)
            ? Typical(profile, reference)
            : null;
}
