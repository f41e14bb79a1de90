namespace SensorProfile.NoiseModel.Noise;

/// <summary>One source of noise in one light of the typical pixel.</summary>
/// <param name="Name">sky, dark current, read noise, quantisation.</param>
/// <param name="Noise">Standard deviation, e-.</param>
/// <param name="Share">Share of the variance of the light, 0…1.</param>
internal sealed record LightNoiseTerm(string Name, Measurement Noise, double Share);
