namespace SensorProfile.Fitting.Models;

/// <summary>Value of a model at x for the given parameters.</summary>
internal delegate double ModelValue(double x, ReadOnlySpan<double> parameters);

/// <summary>Derivatives of a model at x with respect to its parameters.</summary>
internal delegate void ModelGradient(double x, ReadOnlySpan<double> parameters, Span<double> gradient);
