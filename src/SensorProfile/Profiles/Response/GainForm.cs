namespace SensorProfile.Profiles.Response;

/// <summary>How the variance of flat pairs grows with their signal.</summary>
public enum GainForm
{
    /// <summary>In proportion.</summary>
    Straight,

    /// <summary>With a bend, due to the nonlinearity of the response.</summary>
    Curved,
}
