using SensorProfile.Frames;
using SensorProfile.Frames.Survey;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Frames.Survey;

public class MissingMeasurementsTests
{
    [Fact]
    public void WithOneBiasFrameEverythingIsMissing()
    {
        Assert.Equal(
            [
                "Read noise lacks 1 bias frame (2 in one set are needed, 1 there).",
                "The noise of every pixel lacks 7 bias frames (8 in one set are needed, 1 there).",
                "Gain and full well lack flat pairs at 6 more brightness levels from dim to saturated (6 are "
                    + "needed, 0 there): 12 flat frames.",
                "Linearity lacks flat pairs at 6 more known exposures from dim to saturated under the same "
                    + "light (6 are needed, 0 there): 12 flat frames.",
                "Dark current and its per-pixel map lack 3 dark exposures at one temperature (3 of 2 frames "
                    + "each are needed, none there): 6 dark frames.",
                "The law of dark current against temperature lacks 3 temperatures (3 with 3 exposures of 2 "
                    + "frames each are needed, none complete): at most 18 dark frames.",
            ],
            Sentences(Set(FrameKind.Bias, 0, -10, 1))
        );
    }

    [Fact]
    public void AFullSessionLacksNothing()
    {
        FrameSet[] sets =
        [
            Set(FrameKind.Bias, 0, -10, 8),
            .. new[] { 1.0, 2, 3, 4, 5, 6 }.Select(s => Set(FrameKind.Flat, s, -10, 2)),
            .. new[] { -20.0, -10, 0 }.SelectMany(t =>
                new[] { 10.0, 100, 300 }.Select(s => Set(FrameKind.Dark, s, t, 2))
            ),
        ];
        Assert.Empty(Sentences(sets));
    }

    [Fact]
    public void DarksOfOneExposureGiveNoDarkCurrent() =>
        Assert.Equal(
            [
                "Dark current and its per-pixel map lack 2 dark exposures at one temperature (3 of 2 frames each "
                    + "are needed, 1 there at \u221210 °C): 4 dark frames.",
                "The law of dark current against temperature lacks 3 temperatures (3 with 3 exposures of 2 frames "
                    + "each are needed, none complete): at most 18 dark frames.",
            ],
            Sentences(Set(FrameKind.Dark, 300, -10, 20), Set(FrameKind.Dark, 600, -10, 1)).TakeLast(2)
        );

    [Fact]
    public void DarksOfUnknownTemperatureGiveADarkCurrentButNoLaw()
    {
        IEnumerable<string> sentences = Sentences([
            .. new[] { 10.0, 100, 300 }.Select(s => Set(FrameKind.Dark, s, null, 2)),
        ]);
        Assert.DoesNotContain(sentences, s => s.StartsWith("Dark current", StringComparison.Ordinal));
        Assert.Contains(sentences, s => s.StartsWith("The law of dark current", StringComparison.Ordinal));
    }

    [Fact]
    public void FlatsOfOneExposureAreOneLevelUnlessLabelled()
    {
        FrameSet flats = Set(FrameKind.Flat, 2, -10, 12);
        Assert.Contains(
            "Gain and full well lack flat pairs at 5 more brightness levels from dim to saturated (6 are needed, "
                + "1 there): 10 flat frames. All 12 flats have one exposure and count as one level; if the light was "
                + "changed between them, give each level a label in column set of the capture table.",
            Sentences(flats)
        );
        IReadOnlyList<MeasurementLack> labelled = Lacks([
            Set(FrameKind.Bias, 0, -10, 8),
            .. Enumerable.Range(0, 6).Select(i => flats with { Label = $"{i}" }),
        ]);
        Assert.DoesNotContain(MeasurementKind.Gain, labelled.Select(l => l.Measurement));
        Assert.Contains(MeasurementKind.Linearity, labelled.Select(l => l.Measurement));
    }

    [Fact]
    public void FlatsNeedTheLevelWithoutLight()
    {
        FrameSet[] flats = [.. new[] { 1.0, 2, 3, 4, 5, 6 }.Select(s => Set(FrameKind.Flat, s, -10, 2))];
        const string sentence =
            "Gain needs the level without light: 2 bias frames, or 2 dark flats at each exposure of the flats.";
        Assert.Contains(sentence, Sentences(flats));
        Assert.DoesNotContain(
            sentence,
            Sentences([.. flats, .. flats.Select(f => f with { Kind = FrameKind.DarkFlat })])
        );
    }

    [Fact]
    public void WithoutAnyFrameThatMeasuresEverythingIsMissing() =>
        Assert.Equal(
            Enum.GetValues<MeasurementKind>(),
            Lacks([Set(FrameKind.Light, 300, -10, 5)]).Select(l => l.Measurement)
        );

    [Fact]
    public void SeveralModesAreNamed() =>
        Assert.Equal(
            [
                "(gain 100, 1x1) Read noise lacks 1 bias frame (2 in one set are needed, 1 there).",
                "(gain 200, 1x1) Read noise lacks 1 bias frame (2 in one set are needed, 1 there).",
            ],
            Lacks([Set(FrameKind.Bias, 0, -10, 1, 100), Set(FrameKind.Bias, 0, -10, 1, 200)])
                .Where(l => l.Measurement == MeasurementKind.ReadNoise)
                .Select(l => l.Sentence)
        );

    private static IEnumerable<string> Sentences(params FrameSet[] sets) => Lacks(sets).Select(l => l.Sentence);

    private static IReadOnlyList<MeasurementLack> Lacks(FrameSet[] sets) =>
        MissingMeasurements.Find(
            new Inventory
            {
                Frames = [.. sets.SelectMany(s => s.Frames)],
                Sets = sets,
                Rejected = [],
                Findings = [],
            }
        );

    private static FrameSet Set(
        FrameKind kind,
        double exposure,
        double? temperature,
        int frames,
        double? gain = null
    ) =>
        new()
        {
            Kind = kind,
            Settings = new ModeSettings { Gain = gain },
            Width = 4,
            Height = 2,
            ExposureSeconds = exposure,
            TemperatureCelsius = temperature,
            Frames = [.. Enumerable.Range(0, frames).Select(i => new Frame { Path = $"/{i}", Name = $"{i}" })],
        };
}
