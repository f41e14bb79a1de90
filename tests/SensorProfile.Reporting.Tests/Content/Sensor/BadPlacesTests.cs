using SensorProfile.Profiles.Pattern;
using SensorProfile.Reporting.Content.Sensor;

namespace SensorProfile.Reporting.Tests.Content.Sensor;

public sealed class BadPlacesTests
{
    private static readonly string[] _where =
    [
        "upper left",
        "upper middle",
        "upper right",
        "middle left",
        "centre",
        "middle right",
        "lower left",
        "lower middle",
        "lower right",
    ];

    private static FixedPatternProfile Pattern(params long[] hot) =>
        new()
        {
            ReferenceTemperature = -10,
            Thresholds = new DefectThresholds { HotRate = 0.2 },
            Defects = new DefectCounts
            {
                Hot = hot.Sum(),
                Flickering = 1,
                Dead = 2,
                Clusters = 1,
            },
            Places = new DefectPlaces
            {
                Areas = [.. hot.Select((h, i) => new DefectArea(_where[i], h, 1000))],
                Clusters = [new DefectCluster(812, 40, 5)],
                Columns = [17],
                Rows = [3, 9],
            },
            Glow =
            [
                new GlowRegion
                {
                    Where = "right edge",
                    X = 640,
                    Y = 285,
                    Peak = new Measurement(0.0328, 0.0013, "e-/px/s", 9, ""),
                    AreaThreshold = 0.005,
                    AreaShare = 0.059,
                },
            ],
        };

    [Fact]
    public void AStrangerIsToldWhereTheSensorIsBad() =>
        Assert.Equal(
            [
                "It glows at the right edge, brightest near column 640, row 285: 0.0328 ± 0.0013 e⁻/px/s above "
                    + "the rest at −10 °C; 5.9 % of the sensor glows by more than 0.005 e⁻/px/s.",
                "180 pixels are hot (more than 0.2 e⁻/px/s above the typical pixel at −10 °C), one in 50; they "
                    + "crowd in the part “lower right” (100, where an even share would be 20).",
                "Three or more hot pixels touch in one place: 5 of them near column 812, row 40.",
                "Standing out: column 17; rows 3, 9.",
                "Of all pixels, 1 flickers, 2 are dead.",
            ],
            BadPlaces.Sentences(Pattern(10, 10, 10, 10, 10, 10, 10, 10, 100), 9000)
        );

    [Fact]
    public void AnEvenSpreadIsCalledEven()
    {
        // Counts of 20 ± 4.5 by chance; none beyond 4 deviations of counting.
        Assert.Contains(
            "they are spread evenly over the sensor",
            BadPlaces.Sentences(Pattern(20, 24, 17, 15, 22, 29, 18, 19, 16), 9000)[1],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WhatIsNotThereIsSaidToo()
    {
        FixedPatternProfile clean = new() { Defects = new DefectCounts(), Places = new DefectPlaces() };
        Assert.Equal(
            [
                "No part of the sensor glows above its floor.",
                "0 pixels are hot.",
                "No three hot pixels touch.",
                "No column and no row stands out.",
            ],
            BadPlaces.Sentences(clean, 100)
        );
    }
}
