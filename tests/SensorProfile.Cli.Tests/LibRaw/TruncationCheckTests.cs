using SensorProfile.Cli.Tests.Running;
using SensorProfile.Raw;
using SensorProfile.Raw.LibRaw;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.LibRaw;

/// <summary>Half-copied raw files of makers: said to be cut short, with the place, not "unsupported".</summary>
public sealed class TruncationCheckTests : IDisposable
{
    private const string Again = "Copy the file again from the card, or leave it out.";
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [LibRawTheory]
    [InlineData("a.orf")]
    [InlineData("a.nef")]
    [InlineData("a.cr2")]
    [InlineData("a.arw")]
    public void ADirectoryThatIsMissingIsNamed(string name)
    {
        byte[] whole = MakersFile.FromDng(Dng());
        string said = Survey(name, whole[..^20]);
        Assert.StartsWith($"sensorprofile: {name}: directory 0, byte ", said, StringComparison.Ordinal);
        Assert.Contains($"but the file ends after {whole.Length - 20} bytes. {Again}", said, StringComparison.Ordinal);
    }

    /// <summary>What stands before the samples can be read, so the frame is listed; decoding shows the cut.</summary>
    [LibRawTheory, InlineData("bias_a.orf", 1000), InlineData("bias_a.orf", 1)]
    public void SamplesThatAreMissingAreNamed(string name, int cut)
    {
        byte[] whole = MakersFile.FromDng(Dng(), samplesLast: true);
        File.WriteAllBytes(folder[name], whole[..^cut]);
        RawFormatException refusal = Assert.Throws<RawFormatException>(() =>
            LibRawDecoder.Decode(folder[name], (_, _, _) => { })
        );
        Assert.Equal(RawRefusal.Damaged, refusal.Refusal);
        Assert.Contains("tag StripOffsets (273)", refusal.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            $"the data would end at byte {whole.Length}, but the file ends after {whole.Length - cut} bytes. {Again}",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>ISO 14496-12: every part begins with its length, high byte first, and its name.</summary>
    [LibRawTheory, InlineData("a.cr3")]
    public void PartsThatAreMissingAreNamed(string name)
    {
        byte[] bytes = [0, 0, 0, 16, .. "ftypxxxx"u8, 0, 0, 0, 0, 0, 0, 16, 0, .. "moov"u8, .. new byte[1000]];
        Assert.Equal(
            "sensorprofile: a.cr3: byte 16: the part that begins here has 4096 bytes, but 1008 are left of the file. "
                + Again,
            Survey(name, bytes)
        );
    }

    /// <summary>A directory at byte 1162346496 was missed in such files.</summary>
    [Fact]
    public void WhatOnlyBeginsLikeTiffIsNotReadAsTiff()
    {
        File.WriteAllBytes(folder["a.crw"], [.. "II"u8, 26, 0, 0, 0, .. "HEAPCCDR"u8, .. new byte[3000]]);
        Assert.Null(TruncationCheck.Find(folder["a.crw"]));
    }

    /// <summary>Three offsets with their lengths, high byte first, from byte 84 on, where the file says what it is at byte 8.</summary>
    [LibRawTheory, InlineData("a.raf")]
    public void OffsetsBeyondTheEndAreNamed(string name)
    {
        var bytes = new byte[5000];
        "CCD-RAW "u8.CopyTo(bytes.AsSpan(8));
        (bytes[87], bytes[91]) = (148, 200);
        (bytes[102], bytes[106]) = (8, 64); // 2048 and 16384
        Assert.Equal(
            "sensorprofile: a.raf: byte 100: the data would end at byte 18432, but the file ends after 5000 bytes. "
                + Again,
            Survey(name, bytes)
        );
    }

    [LibRawTheory, InlineData("a.orf")]
    public void AWholeFileIsRead(string name)
    {
        File.WriteAllBytes(folder[name], MakersFile.FromDng(Dng(), samplesLast: true));
        Assert.Null(TruncationCheck.Find(folder[name]));
        Assert.Equal(64, LibRawDecoder.Decode(folder[name], (_, _, _) => { }).Mosaic.Width);
    }

    /// <summary>For a stream that it does not get on with LibRaw says no word, and gives zeros.</summary>
    [LibRawTheory, InlineData("a.orf")]
    public void NothingButZerosAreNoFrame(string name)
    {
        DngWriter.Write(folder["a.dng"], Frame(_ => 0));
        File.WriteAllBytes(folder[name], MakersFile.FromDng(File.ReadAllBytes(folder["a.dng"])));
        RawFormatException refusal = Assert.Throws<RawFormatException>(() =>
            LibRawDecoder.Decode(folder[name], (_, _, _) => { })
        );
        Assert.Equal(
            "a.orf: LibRaw cannot read it: it gives 0 for every pixel, which no sensor does. " + Again,
            refusal.Message
        );
    }

    [LibRawTheory, InlineData("a.orf")] // every pixel of a flat may be full
    public void AFullFrameIsRead(string name)
    {
        DngWriter.Write(folder["a.dng"], Frame(_ => 16383));
        File.WriteAllBytes(folder[name], MakersFile.FromDng(File.ReadAllBytes(folder["a.dng"])));
        Assert.Equal(64, LibRawDecoder.Decode(folder[name], (_, _, _) => { }).Mosaic.Width);
    }

    /// <summary>LibRaw knows neither zone, nor fractions of a second, nor the temperature of Exif 2.31.</summary>
    [LibRawTheory, InlineData("a.orf")]
    public void TheFactsAreThoseOfTheDng(string name)
    {
        byte[] dng = Dng();
        File.WriteAllBytes(folder["a.dng"], dng);
        File.WriteAllBytes(folder[name], MakersFile.FromDng(dng));
        using RawFile own = RawFile.Open(folder["a.dng"]);
        RawFacts facts = LibRawDecoder.Describe(folder[name]).Facts;
        Assert.Equal(own.Facts with { Software = null, Treatments = facts.Treatments }, facts);
        Assert.Equal(TimeSpan.FromHours(-5), facts.Time!.Offset);
        Assert.Equal(17.5, facts.Temperature!.Celsius);
        Assert.Empty(facts.Treatments);
    }

    private string Survey(string name, byte[] bytes)
    {
        File.WriteAllBytes(folder[name], bytes);
        string error = folder.Command.Run("survey", name).Expect(ExitCodes.UnreadableInput).Error;
        return Assert.Single(error.Split('\n'), line => line.StartsWith("sensorprofile: ", StringComparison.Ordinal));
    }

    private byte[] Dng()
    {
        var random = new Random(3);
        DngWriter.Write(folder["whole.dng"], Frame(_ => (ushort)(500 + random.Next(40))));
        byte[] bytes = File.ReadAllBytes(folder["whole.dng"]);
        File.Delete(folder["whole.dng"]);
        return bytes;
    }

    private static DngFrame Frame(Func<int, ushort> sample) =>
        new()
        {
            Width = 64,
            Height = 48,
            Samples = Enumerable.Range(0, 64 * 48).Select(sample).ToArray(),
            BitsPerSample = 16,
            ColourFilter = new RawColourFilter(RawColour.Red, RawColour.Green, RawColour.Green, RawColour.Blue),
            WhiteLevel = 16_383,
            Facts = new RawFacts
            {
                Camera = "Fell-24C",
                SerialNumber = "24-1007",
                ExposureSeconds = 120,
                Iso = 800,
                Time = new RawTime(new DateTime(2031, 10, 14, 22, 15, 30, 250), TimeSpan.FromHours(-5)),
                Temperature = new RawTemperature(17.5, 0.5, RawTemperaturePlace.Ambient, "AmbientTemperature"),
                Software = "Ottermere",
            },
        };
}
