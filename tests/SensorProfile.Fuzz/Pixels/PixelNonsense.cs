namespace SensorProfile.Fuzz.Pixels;

/// <summary>What no sensor gives, done to the frames of a small night.</summary>
internal static class PixelNonsense
{
    private const ushort Top = ushort.MaxValue;

    /// <summary>Every kind of nonsense by name; each is done to some of the frames.</summary>
    public static readonly IReadOnlyList<(string Name, Action<ShotFrame[], Random> Do)> All =
    [
        ("constant", Each((_, _, r) => Constant((ushort)r.Next(Top + 1)))),
        ("all zero", Each((_, _, _) => Constant(0))),
        ("all saturated", Each((_, _, _) => Constant(Top))),
        ("inverted", Each((_, _, _) => (s, _) => (ushort)(Top - s))),
        ("swapped bytes", Each((_, _, _) => (s, _) => (ushort)((s << 8) | (s >> 8)))),
        ("two values", Each((_, _, r) => Two((ushort)r.Next(Top + 1), (ushort)r.Next(Top + 1), r))),
        ("white noise", Each((_, _, r) => (_, _) => (ushort)r.Next(Top + 1))),
        ("coarse codes", Each((_, _, r) => Coarse(1 << r.Next(1, 16)))),
        ("huge outliers", Each((_, _, r) => Outliers(r.NextDouble() * r.NextDouble(), r))),
        ("ramp", Each((_, _, r) => Ramp(r.Next(1, 40)))),
        ("columns at 0 and top", Each((_, f, r) => Columns(f.Width, r.Next(2, 12)))),
        ("rows at 0 and top", Each((_, f, r) => Rows(f.Width, r.Next(2, 12)))),
        ("checkerboard", Each((_, f, _) => (_, i) => (i / f.Width + i % f.Width) % 2 == 0 ? Top : (ushort)0)),
        ("wrapped", Each((_, _, r) => Wrapped((ushort)r.Next(Top)))),
        ("scrambled codes", Scramble),
        ("sheared rows", Shear),
        ("one frame different", (frames, r) => Odd(frames[r.Next(frames.Length)], r)),
        ("duplicated frames", Duplicate),
        ("frames in the wrong set", (frames, r) => Swap(frames, r)),
        ("transposed", Transpose),
        ("floats with NaN", (frames, r) => Floats(frames, r, float.NaN)),
        ("floats with infinities", (frames, r) => Floats(frames, r, float.PositiveInfinity, float.NegativeInfinity)),
        ("huge floats", (frames, r) => Floats(frames, r, float.MaxValue, -float.MaxValue, float.Epsilon)),
        ("whole floats", (frames, r) => Floats(frames, r)),
        ("signed", (frames, r) => Some(frames, r, f => f.Signed = true)),
        ("exposures all equal", (frames, _) => All0(frames, f => f.Exposure = 30.0)),
        ("exposures 0", (frames, r) => Some(frames, r, f => f.Exposure = 0.0)),
        ("exposures negative", (frames, r) => Some(frames, r, f => f.Exposure = -1 - r.NextDouble())),
        ("exposures absurd", (frames, r) => Some(frames, r, f => f.Exposure = Math.Pow(10, r.Next(-12, 13)))),
        ("exposures wrong", (frames, r) => Some(frames, r, f => f.Exposure = r.NextDouble() * 400)),
        ("exposures words", (frames, r) => Some(frames, r, f => f.Exposure = "NaN")),
        ("temperatures equal", (frames, _) => All0(frames, f => f.Temperature = -10.0)),
        ("temperatures missing", (frames, r) => Some(frames, r, f => f.Temperature = null)),
        ("temperatures absurd", (frames, r) => Some(frames, r, f => f.Temperature = (r.NextDouble() - 0.5) * 1e6)),
        ("temperatures words", (frames, r) => Some(frames, r, f => f.Temperature = "NaN")),
        ("temperatures random", (frames, r) => Some(frames, r, f => f.Temperature = r.NextDouble() * 60 - 30)),
        ("temperatures turned round", (frames, _) =>
            All0(frames, f => f.Temperature = f.Temperature is double t ? -t : null)
        ),
        ("temperatures close", (frames, r) => All0(frames, f => f.Temperature = -10 + r.NextDouble() * 1e-3)),
        ("gain settings mixed", (frames, r) => Some(frames, r, f => f.Gain = (long)r.Next(3))),
        ("gain settings absurd", (frames, r) => Some(frames, r, f => f.Gain = 1e300 * r.NextDouble())),
        ("colour filter", (frames, _) => All0(frames, f => f.ColourFilter = "RGGB")),
        ("few frames", Few),
        ("cropped", (frames, r) => Some(frames, r, Crop)),
        ("times equal", (frames, _) => All0(frames, f => f.Start = frames[0].Start)),
        ("times turned round", (frames, _) =>
            All0(frames, f => f.Start = new DateTime(4062, 1, 1) - (f.Start - DateTime.MinValue))
        ),
        ("scaled down", Each((_, _, r) => Scaled(Math.Pow(2, -r.Next(1, 17))))),
        ("scaled up", Each((_, _, r) => Scaled(Math.Pow(2, r.Next(1, 10))))),
        ("no noise", NoNoise),
    ];

    private static Action<ShotFrame[], Random> Each(
        Func<ShotFrame[], ShotFrame, Random, Func<ushort, int, ushort>> make
    ) =>
        (frames, random) =>
        {
            int seed = random.Next();
            bool alike = random.Next(2) == 0;
            Some(frames, random, frame =>
            {
                Func<ushort, int, ushort> change = make(frames, frame, alike ? new Random(seed) : random);
                frame.Samples = [.. frame.Samples.Select(change)];
            });
        };

    /// <summary>All frames, those of one kind, or each with a chance of a third.</summary>
    private static void Some(ShotFrame[] frames, Random random, Action<ShotFrame> change)
    {
        int how = random.Next(4);
        string kind = new[] { "bias", "dark", "flat" }[random.Next(3)];
        foreach (ShotFrame frame in frames)
            if (how == 0 || (how <= 2 ? frame.Kind == kind : random.Next(3) == 0))
                change(frame);
    }

    private static void All0(ShotFrame[] frames, Action<ShotFrame> change)
    {
        foreach (ShotFrame frame in frames)
            change(frame);
    }

    private static Func<ushort, int, ushort> Constant(ushort value) => (_, _) => value;

    private static Func<ushort, int, ushort> Two(ushort a, ushort b, Random random) =>
        (_, _) => random.Next(2) == 0 ? a : b;

    private static Func<ushort, int, ushort> Coarse(int step) => (s, _) => (ushort)(s / step * step);

    private static Func<ushort, int, ushort> Outliers(double share, Random random) =>
        (s, _) => random.NextDouble() < share ? (ushort)(random.Next(2) * Top) : s;

    private static Func<ushort, int, ushort> Ramp(int slope) => (_, i) => (ushort)(i * slope);

    private static Func<ushort, int, ushort> Columns(int width, int every) =>
        (s, i) => i % width % every == 0 ? (ushort)(i % width % (2 * every) == 0 ? 0 : Top) : s;

    private static Func<ushort, int, ushort> Rows(int width, int every) =>
        (s, i) => i / width % every == 0 ? (ushort)(i / width % (2 * every) == 0 ? 0 : Top) : s;

    private static Func<ushort, int, ushort> Wrapped(ushort by) => (s, _) => (ushort)(s + by);

    private static Func<ushort, int, ushort> Scaled(double factor) => (s, _) => (ushort)Math.Clamp(s * factor, 0, Top);

    private static void Scramble(ShotFrame[] frames, Random random)
    {
        ushort[] codes = [.. Enumerable.Range(0, Top + 1).Select(c => (ushort)c)];
        random.Shuffle(codes);
        Some(frames, random, frame => frame.Samples = [.. frame.Samples.Select(s => codes[s])]);
    }

    private static void Shear(ShotFrame[] frames, Random random)
    {
        int by = random.Next(1, 9);
        Some(frames, random, frame =>
        {
            ushort[] from = frame.Samples;
            frame.Samples =
            [
                .. Enumerable
                    .Range(0, from.Length)
                    .Select(i => from[i / frame.Width * frame.Width + (i + i / frame.Width * by) % frame.Width]),
            ];
        });
    }

    private static void Duplicate(ShotFrame[] frames, Random random) => Some(frames, random, frame =>
        {
            ShotFrame first = Array.Find(frames, f => f.Kind == frame.Kind && Equals(f.Exposure, frame.Exposure))!;
            if (first.Samples.Length == frame.Samples.Length)
                frame.Samples = first.Samples;
        });

    private static void Swap(ShotFrame[] frames, Random random)
    {
        for (int i = random.Next(1, 12); i > 0; i--)
        {
            (ShotFrame a, ShotFrame b) = (frames[random.Next(frames.Length)], frames[random.Next(frames.Length)]);
            if (a.Samples.Length == b.Samples.Length)
                (a.Samples, b.Samples) = (b.Samples, a.Samples);
        }
    }

    private static void Transpose(ShotFrame[] frames, Random random) => Some(frames, random, frame =>
        {
            ushort[] from = frame.Samples;
            if (from.Length == 0)
                return;
            int side = Math.Min(frame.Width, frame.Height);
            ushort[] to = [.. from];
            for (int y = 0; y < side; y++)
            for (int x = 0; x < side; x++)
                to[y * frame.Width + x] = from[x * frame.Width + y];
            frame.Samples = to;
        });

    private static void Floats(ShotFrame[] frames, Random random, params float[] odd)
    {
        double share = random.NextDouble() * random.NextDouble() * random.NextDouble();
        Some(frames, random, frame =>
            frame.Floats = [
                .. frame.Samples.Select(s =>
                    odd.Length > 0 && random.NextDouble() < share ? odd[random.Next(odd.Length)] : s
                ),
            ]
        );
    }

    private static void Few(ShotFrame[] frames, Random random)
    {
        // a frame that is left out is given no pixels; the writer passes it over
        double share = random.NextDouble();
        foreach (ShotFrame frame in frames)
            if (random.NextDouble() < share)
                frame.Samples = [];
    }

    private static void Crop(ShotFrame frame)
    {
        if (frame.Samples.Length == 0 || frame.Height < 9)
            return;
        frame.Height -= 8;
        frame.Samples = frame.Samples[..(frame.Width * frame.Height)];
        frame.Floats = frame.Floats?[..(frame.Width * frame.Height)];
    }

    private static void NoNoise(ShotFrame[] frames, Random random) => Some(frames, random, frame =>
        {
            if (frame.Samples.Length > 0)
                frame.Samples = [.. Enumerable.Repeat((ushort)frame.Samples.Average(s => s), frame.Samples.Length)];
        });

    private static void Odd(ShotFrame frame, Random random) =>
        frame.Samples = [.. frame.Samples.Select(_ => (ushort)random.Next(Top + 1))];
}
