using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Reporting;

/// <summary>The noise of a light, source by source, as the terminal and the page print it.</summary>
internal static class LightNoiseLines
{
    /// <summary>"Noise of one 300 s light at −6.0 °C".</summary>
    /// <param name="noise">The sources.</param>
    /// <param name="answer">The answer that holds them.</param>
    public static string Title(LightNoise noise, SetpointAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(noise);
        ArgumentNullException.ThrowIfNull(answer);
        return $"Noise of one {QuantityText.Number(answer.ExposureSeconds)} s light at {QuantityText.Temperature(noise.Temperature)}";
    }

    /// <summary>
    /// Source, noise, share of the variance of the light; the share is empty where the source is not part of the typical
    /// pixel.
    /// </summary>
    /// <param name="noise">The sources.</param>
    public static IReadOnlyList<IReadOnlyList<string>> Of(LightNoise noise)
    {
        ArgumentNullException.ThrowIfNull(noise);
        string share = $"{QuantityText.Number(100 * noise.Share)} % of the pixels have at most";
        return
        [
            .. noise.Terms.Select(term =>
                (IReadOnlyList<string>)[term.Name, Text(term.Noise), Percent(100 * term.Share)]
            ),
            ["together, typical pixel", Text(noise.Total), Percent(100)],
            .. Line($"a master of {noise.Darks} darks adds", noise.MasterDark),
            .. Line("glow adds, at its brightest", noise.GlowPeak),
            .. Line(share, noise.AtShare),
            .. Line("the same, flickering pixels included", noise.AtShareWithFlicker),
            .. noise.FullPixels is { } full
                ? (IReadOnlyList<string>[])
                    [
                        ["full pixels", Percent(full.Value), ""],
                    ]
                : [],
        ];
    }

    private static IEnumerable<IReadOnlyList<string>> Line(string name, Measurement? noise) =>
        noise is null
            ? []
            :
            [
                [name, Text(noise), ""],
            ];

    private static string Text(Measurement noise) =>
        noise.StandardUncertainty > 0
            ? QuantityText.Of(noise)
            : $"{QuantityText.Number(noise.Value, 4)} {QuantityText.Unit(noise.Unit)}";

    private static string Percent(double percent) =>
        percent is > 0 and < 0.01 ? "less than 0.01 %" : QuantityText.Number(percent, percent < 1 ? 1 : 3) + " %";
}
