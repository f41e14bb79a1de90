namespace SensorProfile.Drift.OverTheYears;

/// <summary>
/// Whether the dark current changed because the sensor aged or because its temperature probe now reads differently.
/// </summary>
/// <remarks>
/// A probe that reads wrong moves all pixels, each by its own law, like one temperature step; ageing moves the ordinary
/// pixels and leaves the hot ones alone. Both are expressed as the step that would explain them: δ = ΔT₂·log₂(rate now
/// / rate then).
/// </remarks>
/// <param name="Mode">Settings of the mode, in words.</param>
/// <param name="Verdict">Which of the two changed.</param>
/// <param name="StepOfTypical">δ of the typical pixel, °C; null without its rates.</param>
/// <param name="StepOfHotPixels">δ of the hot pixels by their own laws, °C; null without maps.</param>
/// <param name="HotPixels">Number of hot pixels used.</param>
/// <param name="Gap">Why the hot pixels tell nothing; null when they do.</param>
internal sealed record ProbeOrAgeing(
    string Mode,
    ProbeVerdict Verdict,
    Measurement? StepOfTypical,
    Measurement? StepOfHotPixels,
    int HotPixels,
    ProbeGap? Gap
);
