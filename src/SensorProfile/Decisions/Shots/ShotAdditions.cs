using SensorProfile.Frames;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Decisions.Shots;

/// <summary>
/// What single additions to an existing session would bring, from the design of the session alone
/// (<see cref="SessionDesign"/>).
/// </summary>
internal static class ShotAdditions
{
    private const int AddedBias = 16,
        AddedDarks = 4;
    internal const double MinReduction = 0.005;

    // a new temperature lies at least this far from those that exist, °C
    internal const double WorthAnother = 3;

    internal static IEnumerable<ShotAddition> Suggest(ShotQuestion question, SessionDesign design, double longest)
    {
        var additions = new List<ShotAddition> { Bias(question, design), Flats(question, design) };
        IEnumerable<double> fresh = ShotList
            .Temperatures(question, 2)
            .Where(celsius => design.Darks.All(d => Math.Abs(d.Celsius - celsius) >= WorthAnother));
        foreach (double celsius in fresh.Concat(design.Darks.Select(d => d.Celsius)))
            additions.AddRange(Darks(question, design, celsius, longest));
        return additions
            .Where(a =>
                a.Reduction > MinReduction && (question.Minutes is not double minutes || a.Seconds <= 60 * minutes)
            )
            .OrderByDescending(a => a.Reduction)
            .ThenBy(a => a.Seconds);
    }

    private static ShotAddition Bias(ShotQuestion question, SessionDesign design) =>
        Suggest(
            new AddedFrames(FrameKind.Bias, AddedBias, null, 1, null),
            QuantityNames.ReadNoise,
            "%",
            design.ReadNoise,
            (design with { Bias = design.Bias + AddedBias }).ReadNoise,
            AddedBias * question.OverheadSeconds
        );

    private static ShotAddition Flats(ShotQuestion question, SessionDesign design)
    {
        int add = Math.Max(MissingMeasurements.FlatLevels - design.FlatPairs, 4);
        return Suggest(
            new AddedFrames(FrameKind.Flat, 2 * add, null, 1, null),
            QuantityNames.Gain,
            "%",
            design.Gain,
            (design with { FlatPairs = design.FlatPairs + add }).Gain,
            2 * add * (1 + question.OverheadSeconds)
        );
    }

    private static IEnumerable<ShotAddition> Darks(
        ShotQuestion question,
        SessionDesign design,
        double celsius,
        double longest
    )
    {
        DarkDesign? before = design.At(celsius);
        (double, int)[] frames =
            before is not null && double.IsFinite(before.SlopeVariance)
                ? [(longest, AddedDarks)]
                : [(longest / 10, AddedDarks), (longest / 3, AddedDarks), (longest, AddedDarks)];
        SessionDesign after = design.WithDarks(celsius, frames);
        double seconds = frames.Sum(f => f.Item2 * (f.Item1 + question.OverheadSeconds)) + question.SettleSeconds;
        var what = new AddedFrames(
            FrameKind.Dark,
            frames.Sum(f => f.Item2),
            longest,
            frames.Length,
            Math.Round(2 * celsius) / 2
        );
        yield return Suggest(
            what,
            QuantityNames.DoublingTemperature,
            "°C",
            design.DoublingTemperature,
            after.DoublingTemperature,
            seconds
        );
        if (before is not null)
            yield return Suggest(
                what,
                QuantityNames.DarkCurrent,
                "e-/px/s",
                SessionDesign.Finite(Math.Sqrt(before.SlopeVariance)),
                SessionDesign.Finite(Math.Sqrt(after.At(celsius)!.SlopeVariance)),
                seconds
            );
    }

    private static ShotAddition Suggest(
        AddedFrames what,
        string quantity,
        string unit,
        double? before,
        double? after,
        double seconds
    ) =>
        new(
            what,
            quantity,
            after is not double a ? 0
                : before is double b ? 1 - a / b
                : 1,
            seconds
        )
        {
            Before = before,
            After = after,
            Unit = unit,
        };
}
