namespace SensorProfile.Profiles.Darks;

/// <summary>
/// How far a master dark that was computed lies from one that was taken, over the pixels of one class.
/// </summary>
/// <param name="Pixels">Pixels compared; over several sets their sum.</param>
/// <param name="Coverage">Share of them that lie within the 95 % interval of the comparison, 0…1: near 0.95 when the
/// stated uncertainty is right.</param>
/// <param name="Residual">Robust standard deviation of computed minus taken, the common level taken out, e-.</param>
/// <param name="Noise">Typical standard uncertainty of the master that was taken, e-.</param>
/// <param name="Expected">Typical standard uncertainty of the difference, that of the prediction included, e-.</param>
public sealed record PredictionFigures(
    long Pixels,
    double Coverage,
    Measurement Residual,
    double Noise,
    double Expected
);
