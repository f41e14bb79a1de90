namespace SensorProfile.NoiseModel.Sky;

/// <summary>What a sky estimate needs: brightness, optics and filter.</summary>
public sealed record SkyBrightness
{
    /// <summary>Sky brightness, mag/arcsec² (AB scale; a visual sky meter reads within about 0.1 of it).</summary>
    public required double Magnitude { get; init; }

    /// <summary>Focal length over aperture.</summary>
    public required double FocalRatio { get; init; }

    /// <summary>Pixel size, µm.</summary>
    public required double PixelMicrometres { get; init; }

    /// <summary>Width of the pass band, nm.</summary>
    public double BandwidthNanometres { get; init; } = 300;

    /// <summary>Centre of the pass band, nm.</summary>
    public double CentreNanometres { get; init; } = 550;

    /// <summary>Electrons per photon at the aperture: optics, filter and sensor together, 0…1.</summary>
    public double Efficiency { get; init; } = 0.5;

    /// <summary>
    /// Relative standard uncertainty of the estimate: brightness to 0.2 mag and efficiency to 20 % give about 0.3.
    /// </summary>
    internal double RelativeUncertainty { get; init; } = 0.3;

    /// <summary>The sky in e-/px/s.</summary>
    /// <remarks>
    /// S = (F₀/h)·10^(−0.4 m)·(Δλ/λ)·(π/4)·(p/N)²·(206264.8)²·η, F₀ = 3631 Jy (AB scale, Oke and Gunn 1983, ApJ 266,
    /// 713), h exact (CODATA 2018), p pixel size in m, N focal ratio: aperture and focal length cancel. Include a
    /// central obstruction in η.
    /// </remarks>
    /// <exception cref="DecisionRefusedException">A number is out of range.</exception>
    public SkyRate Estimate(string name = "your sky, estimated")
    {
        // photons/s/m² per unit of ln λ, at magnitude 0
        const double FluxOverPlanck = 3631e-26 / 6.62607015e-34;
        const double ArcsecondsPerRadian = 180 * 3600 / Math.PI;
        if (!(Magnitude is > 0 and < 30))
            throw Refuse.BadArgument(
                FindingCodes.SkyBrightnessOutOfRange,
                $"A sky brightness of {Plain.Number(Magnitude)} mag/arcsec² is not between 0 and 30."
            );
        Refuse.UnlessPositive(FocalRatio, FindingCodes.FocalRatioNotPositive, "focal ratio", "(such as 5 for f/5)");
        Refuse.UnlessPositive(PixelMicrometres, FindingCodes.PixelSizeNotPositive, "pixel size", "µm");
        Refuse.UnlessPositive(BandwidthNanometres, FindingCodes.BandwidthNotPositive, "bandwidth", "nm");
        Refuse.UnlessPositive(CentreNanometres, FindingCodes.WavelengthNotPositive, "centre of the pass band", "nm");
        if (!(Efficiency is > 0 and <= 1))
            throw Refuse.BadArgument(
                FindingCodes.EfficiencyOutOfRange,
                $"The efficiency must be above 0 and at most 1, not {Plain.Number(Efficiency)}."
            );
        double side = PixelMicrometres * 1e-6 / FocalRatio * ArcsecondsPerRadian;
        double rate =
            FluxOverPlanck
            * Math.Pow(10, -0.4 * Magnitude)
            * (BandwidthNanometres / CentreNanometres)
            * (Math.PI / 4)
            * side
            * side
            * Efficiency;
        return new SkyRate(
            name,
            new Measurement(
                rate,
                RelativeUncertainty * rate,
                "e-/px/s",
                1,
                "estimated from sky brightness and optics (AB scale)"
            ),
            [
                $"{Plain.Number(Magnitude)} mag/arcsec², f/{Plain.Number(FocalRatio)}, "
                    + $"{Plain.Number(PixelMicrometres)} µm pixels, {Plain.Number(BandwidthNanometres)} nm wide at "
                    + $"{Plain.Number(CentreNanometres)} nm, efficiency {Plain.Number(Efficiency)}{Doubt}",
            ]
        );
    }

    // a named sky is exact by definition
    private string Doubt => RelativeUncertainty > 0 ? $"; good to about {Plain.Percent(RelativeUncertainty)}" : "";
}
