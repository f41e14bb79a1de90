using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>Makers' raw files through the system's LibRaw, in a child process of this program.</summary>
public sealed class LibRawTests : IDisposable
{
    private const int Width = 96,
        Height = 70;
    private readonly TemporaryFolder folder = new();

    // forms that LibRaw reads rightly: not uncompressed tiles, nor lossless JPEG in several strips
    private static readonly Dictionary<string, DngForm> forms = new()
    {
        ["plain"] = new DngForm(),
        ["big-endian"] = new DngForm { IsBigEndian = true },
        ["packed"] = new DngForm { IsPacked = true },
        ["lossless JPEG, one component"] = new DngForm { Compression = RawCompression.LosslessJpeg },
        ["lossless JPEG, two components"] = new DngForm
        {
            Compression = RawCompression.LosslessJpeg,
            JpegComponents = 2,
        },
    };

    public static TheoryData<string> Forms => [.. forms.Keys];

    public void Dispose() => folder.Dispose();

    [LibRawTheory, MemberData(nameof(Forms))]
    public void TheSameDngGivesTheSameSamplesBothWays(string form)
    {
        string path = folder["frame.dng"];
        DngWriter.Write(path, Frame(), forms[form]);
        Compare(path);
    }

    [LibRawTheory, InlineData("raw/still-14bit.dng")]
    public void SoDoesARealFile(string name)
    {
        string data = Environment.GetEnvironmentVariable("SENSORPROFILE_TESTDATA") ?? Checkout.File("../shared/data");
        string path = Path.Combine(data, name);
        if (!File.Exists(path)) // kept outside the project
            return;
        LibRawFrame other = CompareSamples(path);
        Assert.Null(other.Facts.ExposureSeconds); // its tags hold 0, for which LibRaw 0.20 says 1 s
        Assert.Null(other.Facts.Iso);
    }

    [LibRawTheory, InlineData(".cr3"), InlineData(".raf"), InlineData(".orf")]
    public void WhatLibRawCannotReadIsRefusedByNameAndTheRestGoesOn(string extension)
    {
        var bytes = new byte[50_000];
        new Random(5).NextBytes(bytes);
        File.WriteAllBytes(folder["noise" + extension], bytes);
        CommandRun run = folder.Command.Run("survey", "noise" + extension).Expect(ExitCodes.UnreadableInput);
        Assert.Contains($"noise{extension}: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("LibRaw cannot read it: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("Copy it again from the card in case it is damaged", run.Error, StringComparison.Ordinal);
        Assert.Contains("convert it to DNG.", run.Error, StringComparison.Ordinal);
    }

    /// <summary>
    /// Three computed colours in every pixel came as a sensor without a filter, the first colour for its samples.
    /// </summary>
    [LibRawTheory, InlineData(3)]
    public void PixelsOfSeveralColoursAreRefused(int colours)
    {
        using (FileStream stream = File.Create(folder["linear.dng"]))
        {
            var file = new TiffBuilder(stream, bigEndian: false);
            TiffEntries mosaic = file.NewDirectory();
            DngFrame wide = Frame() with { Width = Width * colours, Samples = new ushort[Width * Height * colours] };
            SegmentWriter.Write(file, mosaic, wide with { ActiveArea = null }, new DngForm());
            DngTags.AddMosaic(mosaic, wide with { ActiveArea = null, ColourFilter = null });
            DngTags.AddCamera(mosaic, wide);
            mosaic.Longs(Tag.ImageWidth, Width);
            mosaic.Shorts(Tag.SamplesPerPixel, colours);
            mosaic.Shorts(Tag.BitsPerSample, [.. Enumerable.Repeat(16, colours)]);
            file.Finish(file.Append(mosaic));
        }
        RawFormatException refusal = Assert.Throws<RawFormatException>(() =>
            LibRawDecoder.Run(folder["linear.dng"], (_, _, _) => { }, alsoDng: true)
        );
        Assert.Contains("every pixel of it holds 3 colours", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(RawRefusal.Demosaiced, refusal.Refusal);
    }

    /// <summary>Whatever LibRaw makes of a damaged file: an answer or one refusal, and this process goes on.</summary>
    [LibRawTheory, InlineData(30)]
    public void ADamagedFileIsReadOrRefusedAndNothingElse(int number)
    {
        string? asked = Environment.GetEnvironmentVariable("SENSORPROFILE_LIBRAW_MUTATIONS");
        number = asked is null ? number : int.Parse(asked, System.Globalization.CultureInfo.InvariantCulture);
        string path = folder["frame.dng"];
        DngWriter.Write(path, Frame(), new DngForm { Compression = RawCompression.LosslessJpeg });
        byte[] whole = File.ReadAllBytes(path);
        var random = new Random(17);
        for (int i = 0; i < number; i++)
        {
            byte[] bytes = i % 5 == 0 ? whole[..random.Next(whole.Length)] : [.. whole];
            for (int change = 0; change < 1 + (i % 6); change++)
                // half of the changes fall on the directories, which stand at the end
                bytes[
                    change % 2 == 0
                        ? random.Next(bytes.Length)
                        : bytes.Length - 1 - random.Next(Math.Min(600, bytes.Length))
                ] = (byte)random.Next(256);
            File.WriteAllBytes(path, bytes);
            try
            {
                LibRawFrame frame = LibRawDecoder.Run(path, (_, _, _) => { }, alsoDng: true);
                Assert.InRange(frame.Mosaic.Width, 1, ushort.MaxValue);
            }
            catch (RawFormatException refusal)
            {
                Assert.StartsWith("frame.dng", refusal.Message, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void WithoutLibRawOneSentenceNamesThePackage()
    {
        Assert.Equal("LibRaw is not installed", LibRawLibrary.Load(["/not/there/libraw.so"]).Problem);
        File.WriteAllBytes(folder["a.cr3"], new byte[5000]);
        SensorProfileCommand command = folder.Command with
        {
            Environment = new Dictionary<string, string?> { [LibRawLibrary.PathVariable] = "/not/there/libraw.so" },
        };
        CommandRun run = command.Run("survey", "a.cr3").Expect(ExitCodes.UnreadableInput);
        Assert.Contains(
            "LibRaw is not installed. Install LibRaw (package libraw20 or libraw23 on Debian",
            run.Error,
            StringComparison.Ordinal
        );
        Assert.Contains("or convert the file to DNG.", run.Error, StringComparison.Ordinal);
    }

    private static DngFrame Frame()
    {
        var random = new Random(11);
        return new()
        {
            Width = Width,
            Height = Height,
            Samples = Enumerable.Range(0, Width * Height).Select(_ => (ushort)random.Next(4096)).ToArray(),
            BitsPerSample = 12,
            ActiveArea = new RawArea(6, 4, 70, 92),
            ColourFilter = new RawColourFilter(RawColour.Green, RawColour.Blue, RawColour.Red, RawColour.Green),
            BlackLevel = new RawBlackLevel
            {
                PatternRows = 1,
                PatternColumns = 1,
                Pattern = [256],
            },
            WhiteLevel = 4095,
            Facts = new RawFacts
            {
                Camera = "Fell-24C",
                ExposureSeconds = 0.1,
                Iso = 800,
                Time = new RawTime(new DateTime(2031, 10, 14, 22, 15, 30), null),
            },
        };
    }

    private static void Compare(string path)
    {
        using RawFile own = RawFile.Open(path);
        LibRawFrame other = CompareSamples(path);
        Assert.Equal(own.Facts.Iso, other.Facts.Iso);
        Assert.Equal(own.Facts.ExposureSeconds, other.Facts.ExposureSeconds);
        Assert.Equal(own.Facts.Time?.Local, other.Facts.Time?.Local);
    }

    private static LibRawFrame CompareSamples(string path)
    {
        using RawFile own = RawFile.Open(path);
        var expected = new ushort[own.Mosaic.SensorWidth * own.Mosaic.SensorHeight];
        own.ReadSensorRows(0, expected);
        var samples = new ushort[expected.Length];
        LibRawFrame other = LibRawDecoder.Run(
            path,
            (_, row, rows) => rows.Span.CopyTo(samples.AsSpan(row * own.Mosaic.SensorWidth)),
            alsoDng: true
        );
        Assert.Equal(own.Mosaic.ActiveArea, other.Mosaic.ActiveArea);
        Assert.Equal(own.Mosaic.ColourFilter, other.Mosaic.ColourFilter);
        Assert.Equal(expected, samples);
        return other;
    }
}
