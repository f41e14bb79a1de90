using SensorProfile.Fits;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;
using SensorProfile.Simulation;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;
using SensorProfile.Tests.Characterisation;
using Xunit.Abstractions;

namespace SensorProfile.Tests.RawCheck;

/// <summary>Signs of treatment in camera: found where it was simulated, with numbers, and nowhere else.</summary>
public sealed class TreatmentTests(ITestOutputHelper output)
{
    private static readonly string[] signs =
    [
        "hot-pixels-suppressed",
        "averaged-set",
        "missing-codes",
        "digital-scaling",
        "neighbour-correlation",
        "black-clipped",
        "averaged-frame",
    ];

    /// <summary>120 × 90 px would have too few hot pixels in groups: 240 × 180 px with 2 % of them.</summary>
    private static CameraDescription Camera(params Shot[] more) =>
        new()
        {
            Name = "Tarn-9M",
            Width = 240,
            Height = 180,
            Gain = 0.5,
            ReadNoise = 3,
            FullWell = 30000,
            BiasLevel = 500,
            Bits = 16,
            Serial = 3,
            DarkCurrent = new DarkCurrentParameters { RateAtReference = 0.1, DoublingTemperature = 6 },
            DarkNonuniformity = 0.2,
            ResponseNonuniformity = 0.01,
            HotPixels = new HotPixels
            {
                Share = 0.02,
                Distribution = new() { Minimum = 0.3, Maximum = 30 },
            },
            CosmicRays = new CosmicRays { HitsPerMegapixelSecond = 0.2 },
            Shots = [.. Nights.Full(30000, [-10], [30, 100, 300], darks: 4, bias: 10), .. more],
        };

    private Finding[] Signs(CameraDescription camera, ulong seed = 21)
    {
        using var session = new SimulatedSession(camera, seed);
        Finding[] found = [.. session.Characterise().Profile.Findings.Where(f => signs.Contains(f.Code))];
        foreach (Finding finding in found)
            output.WriteLine($"{finding.Code}: {finding.Message}");
        return found;
    }

    [Theory, InlineData(null, 21), InlineData(null, 22), InlineData("RGGB", 23), InlineData("RGGB", 24)]
    public void ARawCameraShowsNone(string? filter, ulong seed) =>
        Assert.Empty(
            Signs(
                Camera() with
                {
                    ColourFilter = filter,
                    Glow =
                    [
                        new Glow
                        {
                            Shape = GlowShape.Corner,
                            X = 1,
                            Y = 1,
                            Rate = 2,
                        },
                    ],
                    TelegraphPixels = new TelegraphPixels { Share = 0.005, Amplitude = 30 },
                },
                seed
            )
        );

    [Theory, InlineData(21), InlineData(22)]
    public void ACutBlackLevelLeavesTheGainTrue(ulong seed)
    {
        // Half of the bias pixels are cut off at 0: their variance is a third of the noise, and as the zero of photon
        // transfer it took 1 % of the gain, at 3 of its errors.
        using var session = new SimulatedSession(Camera() with { BiasLevel = 0 }, seed);
        CameraProfile profile = session.Characterise().Profile;
        Assert.Contains(profile.Findings, f => f.Code == "black-clipped");
        Measurement gain = profile.Modes[0].Gain!;
        output.WriteLine($"{gain.Value:F4} ± {gain.StandardUncertainty:F4}");
        Assert.InRange(Math.Abs(gain.Value - 0.5) / gain.StandardUncertainty, 0, 2.5);
    }

    [Theory, InlineData(null), InlineData("RGGB")]
    public void BrightColumnsAreNoSign(string? filter) =>
        Assert.Empty(
            Signs(
                Camera() with
                {
                    ColourFilter = filter,
                    HotPixels = new HotPixels
                    {
                        Share = 0.0005,
                        Distribution = new() { Minimum = 1, Maximum = 30 },
                    },
                    BadColumns = new BadLines { Count = 2, Rate = 0.8 },
                }
            )
        );

    [Theory, InlineData(0.0005), InlineData(0.00005)]
    public void ACameraWithHardlyAHotPixelShowsNone(double share) =>
        Assert.Empty(
            Signs(
                Camera() with
                {
                    HotPixels = new HotPixels
                    {
                        Share = share,
                        Distribution = new() { Minimum = 1, Maximum = 30 },
                    },
                }
            )
        );

    [Theory, InlineData(null), InlineData("RGGB")]
    public void SuppressedHotPixelsAreFound(string? filter)
    {
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    ColourFilter = filter,
                    InCamera = new InCamera { HotPixelThreshold = 300 },
                }
            )
        );
        Assert.Equal("hot-pixels-suppressed", sign.Code);
        Assert.Contains("stand alone", sign.Message, StringComparison.Ordinal);
        Assert.NotEmpty(sign.Frames);
    }

    [Theory, InlineData(100, true), InlineData(5000, false)]
    public void WhereTheNoiseOfFlatsIsCutTooItIsSaid(int limit, bool cut)
    {
        // Flats at half of 30000 e- have 122 e- or 245 ADU of noise: twice that is beyond a limit of 100 ADU, far below
        // one of 5000 ADU.
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    HotPixels = new HotPixels
                    {
                        Share = 0.02,
                        Distribution = new() { Minimum = 0.3, Maximum = 100 },
                    },
                    InCamera = new InCamera { HotPixelThreshold = limit },
                }
            )
        );
        Assert.Equal(cut, sign.Message.Contains("every number in electrons", StringComparison.Ordinal));
    }

    [Fact]
    public void HotPixelsThatVanishInLongerDarksAreFound()
    {
        // 1.5…4 e-/px/s are 90…240 ADU at 30 s, below the camera's limit of 300 ADU, and 900…2400 ADU at 300 s.
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    HotPixels = new HotPixels
                    {
                        Share = 0.02,
                        Distribution = new() { Minimum = 1.5, Maximum = 4 },
                    },
                    InCamera = new InCamera { HotPixelThreshold = 300 },
                }
            )
        );
        Assert.Contains("fall from", sign.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFilterThatLeavesNoHotPixelBeyondItsLimitIsNoticed()
    {
        // All single hot pixels more than 40 ADU, 7 read noises, above the median of their neighbours are gone from
        // every dark, and none of the frames shows a bright pixel that could stand alone.
        using var session = new SimulatedSession(
            Camera() with
            {
                Width = 400,
                Height = 300,
                HotPixels = new HotPixels
                {
                    Share = 0.01,
                    Distribution = new() { Minimum = 0.1, Maximum = 30 },
                },
            },
            29
        );
        Assert.DoesNotContain(session.Characterise().Profile.Findings, f => f.Code == "hot-pixels-suppressed");
        foreach (string file in Directory.GetFiles(session.Folder, "dark_*"))
            Replace(file, WithoutHotPixels(file, 400, 40), []);
        CameraProfile profile = session.Characterise().Profile;
        Finding sign = Assert.Single(profile.Findings, f => f.Code == "hot-pixels-suppressed");
        output.WriteLine(sign.Message);
        Assert.Contains("above the median of their neighbours", sign.Message, StringComparison.Ordinal);
        Assert.Contains(
            "the mean dark rate and the hot-pixel curve are not given",
            sign.Message,
            StringComparison.Ordinal
        );
        Assert.All(profile.Modes[0].DarkCurrent!.Points, p => Assert.Null(p.MeanRate));
        Assert.All(profile.Modes[0].DarkCurrent!.Points, p => Assert.NotNull(p.TypicalRate));
        Assert.Empty(profile.Modes[0].FixedPattern!.HotPixelCurve);
    }

    private static ushort[] WithoutHotPixels(string file, int width, double limit)
    {
        ushort[] pixels = Mean([file], v => (ushort)v),
            treated = [.. pixels];
        int[] steps = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
        for (int i = 0; i < pixels.Length; i++)
        {
            // Beyond an edge of the frame the nearest pixels that are there stand for those that are not.
            int inside =
                (Math.Clamp(i / width, 1, pixels.Length / width - 2) * width) + Math.Clamp(i % width, 1, width - 2);
            ushort[] around = [.. steps.Select(s => pixels[inside + s]).Order()];
            int median = (around[3] + around[4]) / 2;
            if (pixels[i] > median + limit)
                treated[i] = (ushort)median;
        }
        return treated;
    }

    [Fact]
    public void ASuppressionDownToTheNoiseCutsTheTail()
    {
        // 6 ADU of noise: the largest of eight neighbours lies some 1.4 standard deviations, 8 ADU, up; what stands
        // another 4 ADU above it goes, and so does all beyond 3.5 deviations, 21 ADU.
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    Width = 600,
                    Height = 500,
                    HotPixels = new HotPixels(),
                    InCamera = new InCamera { HotPixelThreshold = 4 },
                }
            )
        );
        Assert.Contains("where noise alone puts", sign.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void SmoothingIsFound()
    {
        // Weights 0.7 in the middle and 0.075 on four sides: neighbours correlate by 2·0.7·0.075/(0.7² + 4·0.075²) =
        // 0.205; rounding to codes takes a little off.
        Finding found = Assert.Single(Signs(Camera() with { InCamera = new InCamera { Smoothing = 0.3 } }), f =>
            f.Code == "neighbour-correlation"
        );
        double shown = double.Parse(
            System.Text.RegularExpressions.Regex.Match(found.Message, @"\((-?[0-9.]+)\)").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.Equal(0.205, shown, 0.02);
    }

    [Fact]
    public void ColoursWithFactorsOfTheirOwnAreFound()
    {
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    ColourFilter = "RGGB",
                    Gain = 1,
                    InCamera = new InCamera { ScaleRed = 1.25, ScaleBlue = 1.5 },
                }
            )
        );
        Assert.Equal("digital-scaling", sign.Code);
        // A factor of 1.25 leaves one code in five empty, 1.5 one in three; green stays whole.
        Assert.Matches("R: [^;]*one in 5", sign.Message);
        Assert.Matches("B: [^;]*one in 3", sign.Message);
        Assert.DoesNotContain("G1", sign.Message, StringComparison.Ordinal);
    }

    [Fact] // seen: "the camera takes hot pixels out of its frames", for the odd codes that a factor of 2 leaves empty
    public void ACombOfCodesIsNoEnd()
    {
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    ColourFilter = "RGGB",
                    Gain = 0.8,
                    InCamera = new InCamera { ScaleRed = 2, ScaleBlue = 1.5 },
                }
            )
        );
        Assert.Equal("digital-scaling", sign.Code);
    }

    [Fact]
    public void CodesThatNeverOccurInAnyColourAreFound()
    {
        Finding sign = Assert.Single(
            Signs(
                Camera() with
                {
                    ColourFilter = "RGGB",
                    Gain = 1,
                    InCamera = new InCamera
                    {
                        ScaleRed = 1.2,
                        ScaleGreen = 1.2,
                        ScaleBlue = 1.2,
                    },
                }
            )
        );
        Assert.Equal("missing-codes", sign.Code);
        // a factor of 6/5 leaves one code in six empty
        Assert.Contains("one in 6", sign.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void DarksThatWereAveragedAreFoundByTheirNoise()
    {
        // The mean of four darks in place of them: half the noise of a raw one, rounded to whole codes as a camera
        // would.
        using var session = new SimulatedSession(
            Camera() with
            {
                Shots = Nights.Full(30000, [-10], [30, 100, 300], darks: 16, bias: 10),
            },
            27
        );
        foreach (
            string[] four in Directory.GetFiles(session.Folder, "dark*_30s_*").Order(StringComparer.Ordinal).Chunk(4)
        )
            Replace(four[0], Mean(four, pixel => (ushort)Math.Round(pixel)), four[1..]);
        Finding[] found = [.. session.Characterise().Profile.Findings.Where(f => signs.Contains(f.Code))];
        foreach (Finding finding in found)
            output.WriteLine($"{finding.Code}: {finding.Message}");
        Finding sign = Assert.Single(found);
        Assert.Equal("averaged-set", sign.Code);
    }

    [Fact]
    public void FramesWithFractionalValuesAreLeftOutByName()
    {
        using var session = new SimulatedSession(Camera(), 28);
        string[] darks = [.. Directory.GetFiles(session.Folder, "dark*_300s_*").Order(StringComparer.Ordinal)];
        Replace(darks[0], Mean(darks[..2], pixel => (float)pixel), []);
        CameraProfile profile = session.Characterise().Profile;
        RejectedFile rejected = Assert.Single(profile.Frames.Rejected);
        Assert.Contains("fractional", rejected.Reason, StringComparison.Ordinal);
        Assert.Contains(profile.Findings, f => f.Frames.Contains(rejected.File));
    }

    private static T[] Mean<T>(string[] files, Func<double, T> stored)
    {
        double[]? sum = null;
        foreach (string file in files)
        {
            using FitsFile fits = FitsFile.Open(file);
            double[] pixels = new double[fits.FirstImage!.Width * fits.FirstImage.Height];
            fits.FirstImage.ReadRows(0, pixels.AsSpan());
            sum = sum is null ? pixels : [.. sum.Zip(pixels, (a, b) => a + b)];
        }
        return Array.ConvertAll(sum!, v => stored(v / files.Length));
    }

    private static void Replace<T>(string file, T[] pixels, string[] removed)
        where T : unmanaged
    {
        FitsImage<T> image;
        using (FitsFile fits = FitsFile.Open(file))
            image = new(
                fits.FirstImage!.Width,
                fits.FirstImage.Height,
                pixels,
                [
                    .. fits.FirstImage.Header.Where(c =>
                        c.Keyword
                            is "EXPTIME"
                                or "CCD-TEMP"
                                or "SET-TEMP"
                                or "IMAGETYP"
                                or "DATE-OBS"
                                or "GAIN"
                                or "OFFSET"
                                or "INSTRUME"
                                or "XBINNING"
                                or "YBINNING"
                    ),
                ]
            );
        FitsWriter.Write(file, image, overwrite: true);
        foreach (string other in removed)
            File.Delete(other);
    }

    [
        DataTheory("lab-12bit", "lab-14bit"),
        InlineData("lab-14bit", new[] { "black-level-pinned" }),
        InlineData("lab-12bit", new[] { "digital-scaling" })
    ]
    public void RealCamerasShowTheirOwnSignsOnly(string folder, string[] expected)
    {
        Finding[] findings = [.. LabCameraTests.Characterise(folder).Findings];
        foreach (Finding finding in findings)
            output.WriteLine($"{finding.Code}: {finding.Message}");
        string[] codes = [.. findings.Select(f => f.Code)];
        foreach (string code in expected)
            Assert.Contains(code, codes);
        Assert.Empty(codes.Intersect(signs).Except(expected));
    }

    [Fact]
    public void AFloorThatCutsTheNoiseRefusesReadNoise()
    {
        // A level of 6 ADU with 6 ADU of noise: one pixel in six lies below 0 and is stored as 0.
        using var session = new SimulatedSession(Camera() with { BiasLevel = 6 }, 25);
        CameraProfile profile = session.Characterise().Profile;
        Assert.Null(profile.Modes[0].ReadNoise);
        Assert.Null(profile.Modes[0].ReadNoiseAdu);
        Finding sign = Assert.Single(profile.Findings, f => f.Code == "black-clipped");
        Assert.Equal(Severity.Refusal, sign.Severity);
        Assert.Contains("% of the pixels", sign.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AFloorThatCutsLessThanItsShareDoesNot()
    {
        // 3 standard deviations above 0: 0.13 % and the rounding of code 0 lie at the floor, less than 2 %.
        using var session = new SimulatedSession(Camera() with { BiasLevel = 18 }, 26);
        Assert.NotNull(session.Mode().ReadNoise);
    }
}
