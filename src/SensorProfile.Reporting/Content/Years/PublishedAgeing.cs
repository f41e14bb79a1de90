namespace SensorProfile.Reporting.Content.Years;

/// <summary>
/// Published paces of ageing, to stand beside the measured one. All are of sensors in orbit, where radiation ages them:
/// an upper range for one on the ground.
/// </summary>
/// <remarks>
/// Growth per year between two dates is (last/first)^(1/years) − 1; that of counts is the slope of the published counts
/// over their first value.
/// </remarks>
internal static class PublishedAgeing
{
    /// <summary>Dark current of ordinary pixels.</summary>
    public static IReadOnlyList<PublishedPace> DarkCurrent { get; } =
    [
        new(
            "space camera, 1995 to 1998",
            10,
            24,
            "Baggett et al. 1998, STScI Technical Instrument Report WFPC2 98-03: dark up by 1.3 to 1.8 times in "
                + "2.75 years."
        ),
        new(
            "star tracker, 1999 to 2002",
            9.1,
            9.1,
            "Chandra X-ray Center, Aspect Camera Assembly dark current calibration report of 2002-12-04: mean "
                + "near the peak 10.2 e⁻/px/s on 1999-08-11, 13.6 on 2002-12-04."
        ),
        new(
            "space spectrograph, 2000 to 2009",
            9.7,
            13.7,
            "STScI, STIS CCD anneal reports: clipped median 0.00411 counts/px on 2000-10-21, 0.005796 on "
                + "2004-07-09, 0.01289 on 2009-10-06; the CCD's cooling changed in 2001."
        ),
    ];

    /// <summary>Number of hot pixels.</summary>
    public static IReadOnlyList<PublishedPace> HotPixels { get; } =
    [
        new(
            "space spectrograph, above 0.1 e⁻/px/s",
            15,
            19,
            "STScI, STIS CCD anneal reports of programme 8841: 15 471 pixels on 2000-08-27, rising by 2654 ± 288 "
                + "a year until May 2001, monthly anneals included."
        ),
        new(
            "star tracker, above 100 e⁻/px/s",
            47,
            51,
            "Aspect Camera Assembly dark current calibration report of 2002-12-04: 34 346 pixels on 2000-11-20, "
                + "rising by 16 857 ± 682 a year until December 2002."
        ),
    ];
}
