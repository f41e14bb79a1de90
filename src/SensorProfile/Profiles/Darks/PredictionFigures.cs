namespace SensorProfile.Profiles.Darks;

/// <summary>How far a computed master dark lies from one that was taken, over the pixels of one class.</summary>
/// <param name="Pixels">Number of pixels compared; over several sets, their sum.</param>
/// <param name="Coverage">Share of them that lie within the 95 % interval of the comparison, 0…1: near 0.95 when the
/// stated uncertainty is right.</param>
/// <param name="Residual">Robust standard deviation of computed minus taken, the common level removed, e-.</param>
/// <param name="Noise">Typical standard uncertainty of the master that was taken, e-.</param>
/// <param name="Expected">Typical standard uncertainty of the difference, including that of the prediction, e-.</param>
internal sealed record PredictionFigures(
    long Pixels,
    double Coverage,
    Measurement Residual,
    double Noise,
    double Expected
);
