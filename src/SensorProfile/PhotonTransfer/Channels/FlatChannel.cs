using SensorProfile.Profiles.Response;

namespace SensorProfile.PhotonTransfer.Channels;

/// <summary>Results from the flats of one channel.</summary>
internal sealed record FlatChannel
{
    /// <summary>R, G1, G2, B or mono.</summary>
    public required string Name { get; init; }

    /// <summary>The flat pairs.</summary>
    public required IReadOnlyList<FlatPairPoint> Points { get; init; }

    /// <summary>Level without light, ADU.</summary>
    public required double Pedestal { get; init; }

    /// <summary>Temporal variance without light, ADU².</summary>
    public required double DarkVariance { get; init; }

    /// <summary>Gain fit; null when the pairs do not give one.</summary>
    public GainFitResult? Fit { get; init; }

    /// <summary>Where the channel saturates; null when the flats never do.</summary>
    public SaturationLevel? Saturation { get; init; }

    /// <summary>Linearity; null when it could not be tested.</summary>
    public LinearityResult? Linearity { get; init; }

    /// <summary>Photo-response nonuniformity, %; null when not measured.</summary>
    public Measurement? Nonuniformity { get; init; }

    /// <summary>Full well, e-.</summary>
    public Measurement? FullWell =>
        Saturation is { } s && Fit is { } f
            ? new(
                s.SignalAdu * f.Gain.Value,
                Math.Sqrt(
                    Math.Pow(s.StandardUncertaintyAdu * f.Gain.Value, 2)
                        + Math.Pow(s.SignalAdu * f.Gain.StandardUncertainty, 2)
                        + Math.Pow(s.SignalAdu * f.Gain.Value * Bend, 2)
                ),
                "e-",
                f.Gain.Samples,
                s.By == SaturationCause.Adc ? "up to the top code: " + s.Method : s.Method
            )
            : null;

    /// <summary>
    /// Relative uncertainty that a nonlinear response adds to the electrons at saturation; 0 when linearity was not
    /// tested.
    /// </summary>
    /// <remarks>
    /// The gain holds at low light; a response that bends over gives fewer ADU per electron at the top. A straight line
    /// splits the bend in two, so twice its largest miss is taken.
    /// </remarks>
    public double Bend => Linearity is null ? 0 : 0.02 * Linearity.Deviations.Max(d => Math.Abs(d ?? 0));

    /// <summary>Saturation level including the pedestal, ADU.</summary>
    public Measurement? SaturationLevel =>
        Saturation is { } s
            ? new(s.SignalAdu + Pedestal, s.StandardUncertaintyAdu, "ADU", Points.Count, s.Method)
            : null;

    /// <summary>The photon-transfer curve for the profile.</summary>
    public PhotonTransferCurve Curve() =>
        new()
        {
            Channel = Name == "mono" ? "all" : Name,
            Points =
            [
                .. Points.Select(
                    (p, i) =>
                        new PhotonTransferPoint
                        {
                            Exposure = p.ExposureSeconds,
                            Signal = p.Signal,
                            SignalUncertainty = Math.Sqrt(Math.Max(0, p.Variance) / p.Pixels),
                            Variance = p.Variance - DarkVariance,
                            VarianceUncertainty = GainFit.StandardError(p.Variance, p.Pixels),
                            InGainFit = Fit?.Used[i] ?? false,
                            InLinearityFit = Linearity?.Deviations[i] is not null,
                            LinearityDeviation = Linearity?.Deviations[i],
                            Frames = p.Frames,
                        }
                ),
            ],
            Slope = Fit?.Slope,
            Intercept = Fit?.Intercept,
            Curvature = Fit?.Curvature,
            GainStraight = Fit?.GainStraight,
            GainCurved = Fit?.GainCurved,
            Selected = Fit?.Selected ?? GainForm.Straight,
            FitLimit = Fit?.FitLimit ?? 0,
            SaturatedBy = Saturation?.By,
        };
}
