namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>The methods behind the numbers and where they are published.</summary>
internal static class Sources
{
    /// <summary>One sentence each.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Uncertainties are standard uncertainties (one sigma) after the GUM, JCGM 100:2008; bars and bands in plots are 95 % intervals.",
        "Read noise comes from differences of bias frames, which cancel the fixed pattern; the "
            + "quantisation noise of the converter, 1/12 ADU², is subtracted (EMVA Standard 1288, Release 4.0 Linear).",
        "Gain, full well, linearity and nonuniformity follow the photon-transfer method (EMVA Standard 1288, "
            + "Release 4.0 Linear; J. R. Janesick, Photon Transfer, SPIE Press 2007). The published methods are "
            + "used; no conformity with the standard is claimed.",
        "The curved photon-transfer fit takes the leading term of the brighter-fatter effect (P. Astier et "
            + "al. 2019, Astronomy & Astrophysics 629, A36).",
        "Dark current is the slope of the dark signal against exposure, and separately the growth of the "
            + "temporal variance (EMVA Standard 1288). The median pixel and the mean of all pixels are different "
            + "numbers.",
        "Temperature laws: doubling; Arrhenius; two processes (R. Widenhorn, M. M. Blouke, A. Weber, A. Rest, "
            + "E. Bodegom 2002, Proc. SPIE 4669, 193). They are compared by the corrected Akaike criterion.",
        "Temperatures are those read by the camera's probe, or by the thermometer where they were typed in, not those of "
            + "the silicon itself.",
        "Colours of the plots: M. Okabe and K. Ito 2008, Color Universal Design. Font: DejaVu Sans 2.37.",
    ];
}
