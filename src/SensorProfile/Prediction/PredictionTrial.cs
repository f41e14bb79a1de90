using SensorProfile.Fitting.Statistics;
using SensorProfile.FixedPattern;
using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Glow;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Prediction;

/// <summary>One set of darks, or all of one temperature, left out of a camera and computed from what remains.</summary>
internal sealed class PredictionTrial
{
    /// <summary>One in this many ordinary pixels is judged.</summary>
    public const int OrdinaryJudged = 5; // odd, so that every channel of a colour filter is met

    private readonly PatternInput camera;
    private readonly RateMaps maps;
    private readonly ForecastLaws laws;
    private readonly float[] glow;
    private readonly float[] doublingDoubt;

    private PredictionTrial(
        PatternInput camera,
        RateMaps maps,
        ForecastLaws laws,
        float[] glow,
        float[] doublingDoubt
    ) => (this.camera, this.maps, this.laws, this.glow, this.doublingDoubt) = (camera, maps, laws, glow, doublingDoubt);

    /// <summary>Rates of the small camera from these darks alone; null when they make no line.</summary>
    /// <param name="camera">The small camera with the darks that remain.</param>
    /// <param name="thresholds">As chosen for the whole camera.</param>
    /// <param name="known">Levels of temperatures that are complete, from an earlier trial.</param>
    public static PredictionTrial? Prepare(
        PatternInput camera,
        DefectThresholds thresholds,
        IReadOnlyDictionary<DarkSeries, SeriesLevels>? known = null
    )
    {
        if (RateWalk.Run(camera, scale => PatternMeasurement.Outstanding(thresholds, scale), known) is not { } maps)
            return null;
        GlowFinding? glow = GlowSearch.Find(camera, maps, DefectMap.Classify(camera, maps, thresholds, null));
        float[] doubt = new float[camera.Pixels];
        Array.Fill(doubt, float.NaN);
        foreach (OutstandingPixel pixel in maps.Outstanding)
            doubt[pixel.Index] = pixel.DoublingUncertainty;
        return new(
            camera,
            maps,
            LawsOf(camera, maps, glow?.Regions ?? []),
            glow?.Field.Map() ?? new float[camera.Pixels],
            doubt
        );
    }

    /// <summary>The maps.</summary>
    public RateMaps Maps => maps;

    /// <summary>The laws that its pixels follow.</summary>
    public ForecastLaws Laws => laws;

    /// <summary>Kind of every pixel; of the ordinary ones every fifth is judged, which is plenty.</summary>
    public PixelKind[] Kinds()
    {
        var kinds = new PixelKind[camera.Pixels];
        for (int i = 0; i < kinds.Length; i++)
        {
            bool flickers = (maps.Flags[i] & PixelKinds.Flickering) != 0;
            PixelKind kind = PixelKinds.Classify(State(i), flickers, maps.TypicalUncertainty);
            kinds[i] = kind == PixelKind.Typical && i % OrdinaryJudged != 0 ? PixelKind.Unknown : kind;
        }
        return kinds;
    }

    private PixelState State(int i) =>
        new(
            maps.Rate[i],
            maps.Uncertainty[i],
            maps.Flags[i].HasFlag(PixelFlags.Outstanding),
            maps.Doubling is null ? double.NaN : (double)maps.Doubling[i],
            doublingDoubt[i],
            glow[i]
        );

    /// <summary>
    /// The computed master of a temperature and an exposure.
    /// </summary>
    public Func<int, ComputedPixel> Master(double celsius, double seconds)
    {
        var forecast = new DarkForecast(laws, celsius, seconds);
        double pinned = camera.LevelPinned ? forecast.Typical : 0;
        return i =>
        {
            double gain = camera.Gains[camera.Mosaic.Channel(i / camera.Width, i % camera.Width)];
            (double electrons, double variance) = forecast.Predict(State(i), PedestalVariance(camera, i) * gain * gain);
            return new(camera.Unlit!.Mean[i] * gain + electrons - pinned, variance, electrons - forecast.Typical);
        };
    }

    /// <summary>Signal of the typical pixel in a master, e-.</summary>
    public double TypicalSignal(TakenMaster master) =>
        laws.TypicalRate * laws.Factor(master.Series.TemperatureCelsius) * master.Exposure.Seconds;

    /// <summary>Noise of an ordinary pixel without exposure, e-.</summary>
    public static double UnlitNoise(PatternInput camera) => Math.Sqrt(camera.UnlitVariance) * camera.Gains.Average();

    /// <summary>Variance of a pixel's pedestal, ADU².</summary>
    public static double PedestalVariance(PatternInput camera, int pixel) =>
        PedestalDoubt.Variance(
            camera.Unlit!.Variance.Length > 0 ? camera.Unlit.Variance[pixel] : double.NaN,
            camera.UnlitVariance,
            camera.Unlit.Frames
        );

    /// <summary>The laws that the pixels of these maps follow.</summary>
    private static ForecastLaws LawsOf(PatternInput camera, RateMaps maps, IReadOnlyList<GlowRegion> places)
    {
        DarkSeries nearest = maps
            .Temperatures.MinBy(t => Math.Abs(t.Series.TemperatureCelsius - camera.ReferenceTemperature))
            .Series;
        double[] correlations =
        [
            .. maps.Outstanding.Where(p => float.IsFinite(p.Correlation)).Select(p => (double)p.Correlation),
        ];
        return new ForecastLaws
        {
            Reference = camera.ReferenceTemperature,
            Typical = camera.TypicalLaw,
            Activation = camera.ActivationLaw,
            TypicalRate = maps.Typical,
            Classes = maps.Classes,
            Bend = maps.Bend,
            Glow = GlowGrowth.Find(places, [.. nearest.Exposures.Select(e => (e.Seconds, e.Frames.Count))]),
            LawCorrelation = correlations.Length == 0 ? 0 : OrderStatistics.Median(correlations),
            PedestalShare = maps.UnlitShare,
        };
    }
}
