using SensorProfile.Frames;
using SensorProfile.Frames.Sets;
using SensorProfile.Pixels.Strips;

namespace SensorProfile.Characterisation;

/// <summary>A raw frame in memory, for programs that hold their frames and have no files.</summary>
/// <param name="Facts">
/// What a header would say: kind, exposure, temperature, settings, width and height, and a name that no other frame
/// has.
/// </param>
/// <param name="Samples">Samples as the converter gave them, ADU, row by row: width × height of them. They are not
/// copied.</param>
public sealed record FrameInMemory(Frame Facts, ReadOnlyMemory<ushort> Samples)
{
    internal static Inventory Inventory(IReadOnlyList<FrameInMemory> frames, double toleranceCelsius)
    {
        foreach (FrameInMemory frame in frames)
            frame.Check();
        if (frames.GroupBy(f => f.Facts.Name, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException(
                $"Two frames are named '{twice.Key}'; give every frame a name of its own.",
                nameof(frames)
            );
        Frame[] facts = [.. frames.Select(f => f.Facts).Order(FrameOrder.ByTimeThenName)];
        (IReadOnlyList<FrameSet> sets, IReadOnlyList<Finding> findings) = Grouping.Group(facts, toleranceCelsius);
        return new Inventory
        {
            Frames = facts,
            Sets = sets,
            Rejected = [],
            Findings = findings,
        };
    }

    internal static FrameStack Stack(IEnumerable<FrameInMemory> frames) =>
        FrameStack.InMemory([
            .. frames.Select(f => new InMemorySamples(f.Facts.Name, f.Facts.Width, f.Facts.Height, f.Samples)),
        ]);

    private void Check()
    {
        if (Facts.Width < 1 || Facts.Height < 1 || (long)Facts.Width * Facts.Height != Samples.Length)
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"The frame '{Facts.Name}' is {Facts.Width} × {Facts.Height} px and has {Samples.Length} "
                ) + "samples; give width × height of them.",
                nameof(Samples)
            );
    }
}
