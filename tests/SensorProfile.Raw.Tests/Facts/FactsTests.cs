using System.Globalization;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Facts;
using SensorProfile.Raw.Writing;
using Rational = MetadataExtractor.Rational;

namespace SensorProfile.Raw.Tests.Facts;

/// <summary>
/// Exposure, ISO, time, camera, temperature and treatments, from every place where a file may state them.
/// </summary>
public sealed class FactsTests
{
    private static RawFacts Read(byte[] bytes)
    {
        using RawFile file = RawFile.Open(new MemoryBytes(bytes));
        return file.Facts;
    }

    [Fact]
    public void WhatIsWrittenIsReadBack()
    {
        var facts = new RawFacts
        {
            Camera = "Fell-24C",
            SerialNumber = "OM-0042",
            ExposureSeconds = 1.0 / 8000,
            Iso = 102_400,
            Time = new RawTime(new DateTime(2026, 2, 14, 23, 5, 9).AddTicks(1_234_567), TimeSpan.FromHours(5.75)),
            Orientation = RawOrientation.TurnedAround,
            Temperature = new RawTemperature(-7.5, 0.1, RawTemperaturePlace.Ambient, "AmbientTemperature"),
            Software = "firmware 1.2",
        };
        RawFacts read = Read(
            TestFrames.Bytes(
                EditedFile.Frame with
                {
                    Facts = facts,
                },
                new DngForm { IsBigEndian = true, HasPreview = true }
            )
        );
        Assert.Equal(facts with { Treatments = read.Treatments }, read);
        Assert.Equal(new DateTimeOffset(2026, 2, 14, 17, 20, 9, TimeSpan.Zero).AddTicks(1_234_567), read.Time!.Utc);
        Assert.Empty(read.Treatments);
    }

    /// <summary>Count, then number, version, flags, length and parameters of each, big-endian (DNG 1.7, chapter 7).</summary>
    [Fact]
    public void CorrectionsLeftToTheConverterAreNamedOnce()
    {
        static byte[] Opcode(byte number, params byte[] parameters) =>
            [0, 0, 0, number, 1, 3, 0, 0, 0, 0, 0, 1, 0, 0, 0, (byte)parameters.Length, .. parameters];
        byte[] first = [0, 0, 0, 2, .. Opcode(4, 0, 0, 0, 0, 0, 0, 0, 0), .. Opcode(5, 1, 2, 3)];
        byte[] second = [0, 0, 0, 3, .. Opcode(9, 7), .. Opcode(10), .. Opcode(9, 7)];
        byte[] bytes = EditedFile.Bytes(tags =>
        {
            tags.Bytes(Tag.OpcodeList1, TiffType.Undefined, first);
            tags.Bytes(Tag.OpcodeList2, TiffType.Undefined, second);
        });
        Assert.Equal(
            ["bad pixels told by a code of their own", "a list of bad pixels", "a map of gains", "levels row by row"],
            Read(bytes).Corrections
        );
        Assert.Equal(EditedFile.Frame.Samples.ToArray(), TestFrames.Read(bytes));
    }

    [Theory] // an empty list, one cut short, one that promises too much
    [InlineData(new byte[] { 0, 0, 0, 0 }, new string[0])]
    [InlineData(new byte[] { 0, 0, 0 }, new string[0])]
    [InlineData(new byte[] { 0, 0, 0, 9, 0, 0, 0, 9 }, new string[0])]
    [InlineData(
        new byte[] { 255, 255, 255, 255, 0, 0, 0, 9, 1, 3, 0, 0, 0, 0, 0, 0, 255, 255, 255, 255, 1, 2 },
        new[] { "a map of gains" }
    )]
    [InlineData(new byte[] { 0, 0, 0, 1, 0, 0, 1, 0, 1, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0 }, new[] { "opcode 256" })]
    public void AListOfCorrectionsIsReadAsFarAsItGoes(byte[] list, string[] expected) =>
        Assert.Equal(
            expected,
            Read(EditedFile.Bytes(tags => tags.Bytes(Tag.OpcodeList1, TiffType.Undefined, list))).Corrections
        );

    [Theory]
    [InlineData(nameof(Tag.DateTimeDigitized), nameof(Tag.SubSecTimeDigitized))]
    [InlineData(nameof(Tag.DateTimeOriginal), nameof(Tag.SubSecTimeOriginal))]
    public void FractionsOfASecondBelongToTheTimeThatIsTaken(string time, string fraction)
    {
        byte[] bytes = EditedFile.Bytes(
            _ => { },
            editExif: exif =>
            {
                exif.Without(Tag.DateTimeOriginal);
                exif.Text(Enum.Parse<Tag>(time), "2031:10:14 21:03:04");
                exif.Text(Enum.Parse<Tag>(fraction), "25");
            }
        );
        Assert.Equal(new DateTime(2031, 10, 14, 21, 3, 4, 250), Read(bytes).Time!.Local);
    }

    [Theory]
    [InlineData(0.001), InlineData(0.5), InlineData(30), InlineData(300.25), InlineData(1.0 / 3), InlineData(3600)]
    public void AnExposureComesBackToTheLastDigit(double seconds) =>
        Assert.Equal(
            seconds,
            Read(
                TestFrames.Bytes(
                    EditedFile.Frame with
                    {
                        Facts = new RawFacts { ExposureSeconds = seconds },
                    },
                    new DngForm()
                )
            ).ExposureSeconds
        );

    [Fact]
    public void ZeroExposureAndIsoAndAnEmptyTimeAreUnknown()
    {
        RawFacts facts = Read(
            EditedFile.Bytes(
                tags => tags.Bytes(Tag.DateTime, TiffType.Ascii, new byte[20]),
                editExif: exif =>
                {
                    exif.Fractions(Tag.ExposureTime, false, new Fraction(0, 1_000_000));
                    exif.Shorts(Tag.PhotographicSensitivity, 0);
                }
            )
        );
        Assert.Equal((null, null, null), (facts.ExposureSeconds, facts.Iso, facts.Time));
    }

    [DataFact("raw")]
    public void TheRealFileHasNoExposureAndNoIso()
    {
        using RawFile file = RawFile.Open(TestData.Path("raw/still-14bit.dng"));
        Assert.Equal(
            (null, null, null, "CAMERA-D (14 bit)"),
            (file.Facts.ExposureSeconds, file.Facts.Iso, file.Facts.Time, file.Facts.Camera)
        );
        Assert.Equal(
            (2056.0, 15000.0, "RGGB"),
            (file.Mosaic.BlackLevel!.At(7, 9), file.Mosaic.WhiteLevel!.Value, file.Mosaic.ColourFilter!.Name)
        );
        Assert.Equal(new RawArea(26, 152, 1182, 1886), file.Mosaic.ActiveArea);
        var samples = new ushort[1734 * 1156];
        file.ReadRows(0, samples);
        // README of the file, from dcraw -D -4
        Assert.Equal(
            (1958, 12128, 2634.036),
            (samples.Min(), samples.Max(), Math.Round(samples.Average(sample => (double)sample), 3))
        );
    }

    [Fact]
    public void TheMakersNameIsTakenOffTheCameras()
    {
        RawFacts facts = Read(
            EditedFile.Bytes(tags =>
            {
                tags.Text(Tag.Make, "MAKER CORPORATION");
                tags.Text(Tag.Model, "Maker Fell-24C");
            })
        );
        Assert.Equal("Fell-24C", facts.Camera);
    }

    /// <summary>
    /// Exif 2.31 has three times with a zone each. A camera fills in one zone or all; a program that changes the file
    /// later changes DateTime, and its zone is another clock's.
    /// </summary>
    [Theory]
    [InlineData("36867 22:00, 36881 +02:00", "22:00 +2")]
    [InlineData("36867 22:00, 36882 +02:00", "22:00 +2")]
    [InlineData("306 22:00, 36867 22:00, 36880 +02:00", "22:00 +2")] // written when it was taken
    [InlineData("306 23:00, 36867 22:00, 36880 +02:00", "22:00 ?")] // changed an hour later, who knows where
    [InlineData("306 23:00, 36868 22:00, 36882 -03:00", "22:00 -3")] // no DateTimeOriginal: digitised then
    [InlineData("306 23:00, 36880 +01:00", "23:00 +1")]
    [InlineData("306 23:00, 36867 blank", "")] // a clock that was not set
    public void TheTimeIsTheOneOfTheExposureWithItsOwnZone(string tags, string expected)
    {
        string[][] entries = [.. tags.Split(", ").Select(tag => tag.Split(' '))];
        string Value(string text) =>
            text[0] is '+' or '-' ? text
            : text == "blank" ? "    :  :     :  :  "
            : $"2031:10:14 {text}:00";
        void Add(TiffEntries to, bool first)
        {
            foreach (string[] entry in entries.Where(e => e[0] == "306" == first))
                to.Text((Tag)int.Parse(entry[0], System.Globalization.CultureInfo.InvariantCulture), Value(entry[1]));
        }
        RawTime? time = Read(EditedFile.Bytes(mosaic => Add(mosaic, true), editExif: exif => Add(exif, false))).Time;
        string zone = time?.Offset?.TotalHours.ToString("+0;-0", CultureInfo.InvariantCulture) ?? "?";
        Assert.Equal(expected, time is null ? "" : FormattableString.Invariant($"{time.Local:HH:mm} {zone}"));
    }

    /// <summary>As Exif has a time and a zone, and as converters have written them.</summary>
    [Theory]
    [InlineData("2031:10:14 22:00:05", "5", "+02:00", "22:00:05.5000000 2")]
    [InlineData("2031:10:14 22:00:05", "1234567890", "-0530", "22:00:05.1234567 -5.5")]
    [InlineData("2031-10-14T22:00:05", "", "Z", "22:00:05.0000000 0")]
    [InlineData("2031-10-14 22:00:05", "x", "+15:00", "22:00:05.0000000 ")] // no zone is 15 h ahead
    public void OtherFormsOfTimeAndZoneAreUnderstood(string time, string fraction, string zone, string expected)
    {
        RawTime read = Read(
            EditedFile.Bytes(
                _ => { },
                editExif: exif =>
                {
                    exif.Text(Tag.DateTimeOriginal, time);
                    exif.Text(Tag.SubSecTimeOriginal, fraction);
                    exif.Text(Tag.OffsetTimeOriginal, zone);
                }
            )
        ).Time!;
        Assert.Equal(expected, FormattableString.Invariant($"{read.Local:HH:mm:ss.fffffff} {read.Offset?.TotalHours}"));
    }

    [Fact]
    public void TheZoneOfTiffEpIsTakenWhereExifHasNone()
    {
        byte[] bytes = EditedFile.Bytes(
            tags => tags.Shorts(Tag.TimeZoneOffset, -3 & 0xFFFF),
            editExif: exif => exif.Text(Tag.DateTimeOriginal, "2026:07:01 02:00:00")
        );
        Assert.Null(Read(bytes).Time!.Offset); // an unsigned 65533 is no zone
        byte[] signed = EditedFile.Bytes(
            tags => tags.Bytes(Tag.TimeZoneOffset, TiffType.SignedByte, unchecked((byte)-3)),
            editExif: exif => exif.Text(Tag.DateTimeOriginal, "2026:07:01 02:00:00")
        );
        Assert.Equal(TimeSpan.FromHours(-3), Read(signed).Time!.Offset);
    }

    [Theory]
    [InlineData(21, -1)] // Exif 2.31: FFFFFFFF below the line is unknown
    [InlineData(21, 0)]
    [InlineData(900, 1)]
    public void ATemperatureThatCannotBeIsUnknown(int numerator, int denominator) =>
        Assert.Null(
            Read(
                EditedFile.Bytes(
                    _ => { },
                    editExif: exif => exif.Fractions(Tag.AmbientTemperature, true, new Fraction(numerator, denominator))
                )
            ).Temperature
        );

    [Fact]
    public void ATemperatureOfTheMakersNotesIsReadInWholeDegrees()
    {
        RawFacts facts = Read(MakerNoteFiles.Bytes(temperature: 31));
        Assert.Equal(new RawTemperature(31, 1, RawTemperaturePlace.Body, "Camera Temperature"), facts.Temperature);
    }

    [Fact]
    public void TheThermometerNearestToTheSensorWins()
    {
        MakerNote[] notes =
        [
            new("Ambient Temperature", 12, "12 C"),
            new("Sensor Temperature", new Rational(235, 10), "23.5 C"),
            new("Color Temperature", 5200, "5200 K"),
        ];
        Assert.Equal(
            new RawTemperature(23.5, 0.1, RawTemperaturePlace.Sensor, "Sensor Temperature"),
            MakerNoteFacts.Temperature(notes)
        );
        Assert.Null(MakerNoteFacts.Temperature([new("Sensor Temperature", 255, "255")]));
        Assert.Null(MakerNoteFacts.Temperature([new("Sensor Temperature", "warm", "warm")]));
    }

    [Theory]
    [InlineData("Long Exposure Noise Reduction", "On (unused)", RawTreatmentKind.DarkSubtracted)]
    [InlineData("Multi Frame Noise Reduction", "On", RawTreatmentKind.SeveralExposures)]
    [InlineData("Raw Compression", "Lossy (type 2)", RawTreatmentKind.LossyCompression)]
    [InlineData("Image Quality", "CRAW", RawTreatmentKind.LossyCompression)]
    [InlineData("Quality", "Compressed RAW", RawTreatmentKind.LossyCompression)]
    [InlineData("Multiple Exposure", "On (2 frames)", RawTreatmentKind.SeveralExposures)]
    [InlineData("Multiple Exposure", "Off", null)]
    [InlineData("Pixel Shift", "On", RawTreatmentKind.SeveralExposures)]
    [InlineData("Long Exposure Noise Reduction", "Off", null)]
    [InlineData("High ISO Noise Reduction", "On", null)] // works on the picture, not on the raw samples
    [InlineData("Raw Compression", "Lossless", null)]
    public void TreatmentsAreKnownByTheNamesOfTheNotes(string name, string description, RawTreatmentKind? kind)
    {
        RawTreatment[] expected = kind is { } known ? [new RawTreatment(known, $"{name}: {description}")] : [];
        Assert.Equal(expected, MakerNoteFacts.Treatments([new MakerNote(name, null, description)]));
    }

    [Fact]
    public void NoiseReductionAndCompositesAreNamed()
    {
        byte[] bytes = EditedFile.Bytes(
            tags => tags.Fractions(Tag.NoiseReductionApplied, false, new Fraction(1, 4)),
            editExif: exif => exif.Shorts(Tag.CompositeImage, 3)
        );
        Assert.Equal(
            [
                new RawTreatment(RawTreatmentKind.NoiseReduced, "NoiseReductionApplied: 0.25"),
                new RawTreatment(RawTreatmentKind.SeveralExposures, "CompositeImage: composite"),
            ],
            Read(bytes).Treatments
        );
    }

    [Fact] // DNG specification: it belongs to the directory of the mosaic, which is not the first where a preview is
    public void NoiseReductionIsFoundInTheDirectoryOfTheMosaic()
    {
        byte[] bytes = TestFrames.Bytes(EditedFile.Frame, new DngForm { HasPreview = true });
        // the number of an entry without which the file is read becomes that of the treatment
        int entry = bytes.AsSpan().LastIndexOf(BitConverter.GetBytes((ushort)Tag.WhiteLevel));
        BitConverter.TryWriteBytes(bytes.AsSpan(entry), (ushort)Tag.NoiseReductionApplied);
        Assert.Equal(RawTreatmentKind.NoiseReduced, Assert.Single(Read(bytes).Treatments).Kind);
    }

    [Fact]
    public void NotesThatAConverterPutAsideAreReadAtTheirOldOffset()
    {
        RawFacts facts = Read(MakerNoteFiles.BytesWithPrivateData(temperature: -4, oldOffset: 70_000));
        Assert.Equal(new RawTemperature(-4, 1, RawTemperaturePlace.Body, "Camera Temperature"), facts.Temperature);
    }

    [Fact]
    public void NotesThatWouldTakeMuchMemoryAreGivenUpAndNamed()
    {
        byte[] bytes = MakerNoteFiles.BytesWithPrivateData(temperature: 20, oldOffset: 8 << 20, hugeEntries: 200);
        Assert.Equal(
            [
                "broken-maker-notes test.dng, directory 0, tag DNGPrivateData (50740), byte N: the maker's notes "
                    + "cannot be read; a temperature or treatment that only they name is unknown.",
            ],
            EditedFile.Warnings(bytes)
        );
    }

    [Fact]
    public void NotesThatLeadInCirclesAreGivenUp()
    {
        var stream = new MakerNoteStream(new NoteBytes(new byte[1000], 500, false), "MAKER", "Fell-24C");
        var all = new byte[stream.Length];
        Assert.Equal(1500, stream.Length);
        IOException problem = Assert.Throws<IOException>(() =>
        {
            for (int i = 0; i < 40_000; i++)
            {
                stream.Position = 0;
                stream.ReadExactly(all);
            }
        });
        Assert.Equal("The maker's notes lead in circles.", problem.Message);
    }
}
