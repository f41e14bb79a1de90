using SensorProfile.Frames;
using SensorProfile.Frames.Survey;

namespace SensorProfile.Tests.Frames.Headers;

/// <summary>Everything that goes wrong in headers, from file to sentence.</summary>
public abstract class HeaderFaultTests(string culture) : InCulture(culture)
{
    public sealed class Invariant() : HeaderFaultTests("");

    public sealed class German() : HeaderFaultTests("de-DE");

    private readonly FrameFolder folder = new();

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }

    [Fact]
    public void AGoodHeaderGivesEveryValueAndNoFinding()
    {
        folder.Add("dark_1.fits", ("EGAIN", "0.8"), ("READOUTM", "'Low Noise'"));
        Inventory inventory = folder.Read();
        Frame frame = Assert.Single(inventory.Frames);
        Assert.Empty(inventory.Findings);
        Assert.Equal(
            (FrameKind.Dark, 300.0, -10.1, -10.0),
            (frame.Kind, frame.ExposureSeconds, frame.TemperatureCelsius, frame.SetTemperatureCelsius)
        );
        Assert.Equal(
            new()
            {
                Gain = 100,
                Offset = 30,
                Binning = "1x1",
                Readout = "Low Noise",
            },
            frame.Settings
        );
        Assert.Equal(
            (4, 2, 0, "Tarn-9M", 0.8, "dark_1.fits"),
            (frame.Width, frame.Height, frame.Hdu, frame.Camera, frame.ClaimedGain, frame.Name)
        );
        Assert.Equal(new DateTimeOffset(2025, 10, 4, 21, 0, 0, 125, TimeSpan.Zero), frame.StartUtc);
    }

    [Fact]
    public void SynonymsAreUnderstood()
    {
        folder.AddBare(
            "a.fits",
            ("OBSTYPE", "'zero'"),
            ("EXPOSURE", "0"),
            ("DET-TEMP", "-5.5"),
            ("BLKLEVEL", "12"),
            ("ISOSPEED", "800"),
            ("XBINNING", "2"),
            ("YBINNING", "2")
        );
        Frame frame = Assert.Single(folder.Read().Frames);
        Assert.Equal((FrameKind.Bias, 0.0, -5.5), (frame.Kind, frame.ExposureSeconds, frame.TemperatureCelsius));
        Assert.Equal(
            new()
            {
                Offset = 12,
                Iso = 800,
                Binning = "2x2",
            },
            frame.Settings
        );
    }

    [Theory]
    [InlineData(
        "IMAGETYP",
        "",
        "kind-missing",
        "No frame kind (IMAGETYP) in 1 frame; no measurement works without it: fill in column kind of the capture table."
    )]
    [InlineData(
        "IMAGETYP",
        "'focus'",
        "kind-not-understood",
        "The frame kind of 1 frame is not understood (IMAGETYP = 'focus'); no measurement works without it: "
            + "fill in column kind of the capture table."
    )]
    [InlineData(
        "OBJECT",
        "'evening flat'",
        "kind-contradicts-name",
        "The header gives another kind than the name in 1 frame (dark by header, flat by name); the header was "
            + "used. Correct column kind of the capture table if the names are right."
    )]
    [InlineData(
        "EXPTIME",
        "",
        "exposure-missing",
        "No exposure (EXPTIME or EXPOSURE) in 1 frame: it is unknown; fill in column exposure_s of the capture table."
    )]
    [InlineData(
        "EXPTIME",
        "-1",
        "exposure-invalid",
        "An impossible exposure in 1 frame (EXPTIME = -1): it is taken as unknown; fill in column exposure_s of the capture table."
    )]
    [InlineData(
        "EXPTIME",
        "0",
        "exposure-zero",
        "An exposure of 0 s in 1 frame that should have one: if that is wrong, correct column exposure_s of "
            + "the capture table; if they are bias frames, column kind."
    )]
    [InlineData(
        "EXPTIME",
        "'long'",
        "not-a-number",
        "A word where a number belongs in 1 frame (EXPTIME = 'long'): the value was ignored; correct it in the capture table."
    )]
    [InlineData(
        "EXPTIME",
        "299,5",
        "decimal-comma",
        "A decimal comma in a number of 1 frame (EXPTIME = 299,5, read as 299.5): it was understood; check "
            + "the values, and set the capture computer to decimal points."
    )]
    [InlineData(
        "EXPOSURE",
        "30",
        "exposure-contradicts",
        "EXPTIME and EXPOSURE contradict each other in 1 frame (EXPTIME = 300, EXPOSURE = 30; EXPTIME was "
            + "used); check it and fill in column exposure_s of the capture table if that is wrong."
    )]
    [InlineData(
        "CCD-TEMP",
        "",
        "temperature-missing",
        "No sensor temperature (CCD-TEMP) in 1 frame: it is unknown and dark current cannot be tied to a "
            + "temperature (the set temperature, \u221210 °C, is no reading and was not used in its place); fill in "
            + "column temperature_c of the capture table if you know it."
    )]
    [InlineData(
        "CCD-TEMP",
        "-273.15",
        "temperature-sentinel",
        "A placeholder instead of a sensor temperature in 1 frame (CCD-TEMP = -273.15): it is taken as unknown; "
            + "fill in column temperature_c of the capture table if you know it."
    )]
    [InlineData(
        "CCD-TEMP",
        "263.15",
        "temperature-impossible",
        "A sensor temperature outside \u2212100 to +80 °C in 1 frame (CCD-TEMP = 263.15; perhaps kelvin or "
            + "fahrenheit): it is taken as unknown; fill in column temperature_c of the capture table if you know "
            + "it."
    )]
    [InlineData(
        "XBINNING",
        "0",
        "binning-unreadable",
        "An invalid binning in 1 frame (XBINNING = 0, YBINNING = 1): it is taken as 1x1; correct column "
            + "binning of the capture table if that is wrong."
    )]
    [InlineData(
        "GAIN",
        "",
        "gain-missing",
        "No gain (GAIN or ISOSPEED) in the only frame of Tarn-9M: they are taken to share one setting; if "
            + "they do not, fill in column gain of the capture table."
    )]
    [InlineData(
        "DATE-OBS",
        "",
        "time-missing",
        "No time (DATE-OBS) in 1 frame: they are ordered by name, and drifts in time cannot be seen."
    )]
    [InlineData(
        "DATE-OBS",
        "'soon'",
        "time-unreadable",
        "A time that cannot be read in 1 frame (DATE-OBS = 'soon'): they are ordered by name, and drifts in time cannot be seen."
    )]
    [InlineData(
        "DATE-OBS",
        "'2025-10-04'",
        "time-date-only",
        "A date without a time of day in 1 frame: within a day they are ordered by name, and drifts in time cannot be seen."
    )]
    [InlineData(
        "TIMESYS",
        "'LOCAL'",
        "time-not-utc",
        "A time that is not UTC in 1 frame (TIMESYS = 'LOCAL'): it was used unchanged, so it may be off relative to other frames."
    )]
    [InlineData(
        "DATE-LOC",
        "'2025-10-04T21:00:00.125'",
        "time-maybe-local",
        "DATE-OBS equals the local time DATE-LOC in 1 frame: unless the site keeps UTC, the time is local and "
            + "off by the time zone; differences between frames stay right."
    )]
    [InlineData(
        "BAYERPAT",
        "'RRGB'",
        "colour-filter-unreadable",
        "An invalid colour filter pattern in 1 frame (BAYERPAT = 'RRGB'): they are treated as monochrome; "
            + "if the sensor is a colour sensor, its colours are mixed in every number."
    )]
    public void OneFaultGivesOneSentence(string keyword, string value, string code, string sentence)
    {
        folder.Add("frame_1.fits", (keyword, value));
        Finding finding = Assert.Single(folder.Read().Findings);
        Assert.Equal((code, sentence), (finding.Code, finding.Message));
        Assert.Equal(["frame_1.fits"], finding.Frames);
    }

    [Theory]
    [InlineData("-273.15")]
    [InlineData("-273")]
    [InlineData("-200")]
    [InlineData("999")]
    [InlineData("'NaN'")]
    [InlineData("200")]
    [InlineData("-127")]
    [InlineData("-100.1")]
    [InlineData("80.1")]
    [InlineData("1E30")]
    public void AFalseTemperatureIsUnknown(string value)
    {
        folder.Add("dark_1.fits", ("CCD-TEMP", value));
        Inventory inventory = folder.Read();
        Assert.Null(Assert.Single(inventory.Frames).TemperatureCelsius);
        Assert.Contains(
            Assert.Single(inventory.Findings).Code,
            (string[])["temperature-sentinel", "temperature-impossible"]
        );
    }

    [Theory]
    [InlineData("-100", -100)]
    [InlineData("80", 80)]
    [InlineData("0", 0)]
    [InlineData("-10,5", -10.5)]
    public void ATrueTemperatureIsBelieved(string value, double expected)
    {
        folder.Add("dark_1.fits", ("CCD-TEMP", value));
        Assert.Equal(expected, Assert.Single(folder.Read().Frames).TemperatureCelsius);
    }

    [Fact]
    public void MicrosecondsDecideBetweenTwoExposuresButAreNoneThemselves()
    {
        folder.Add("dark_1.fits", ("EXPTIME", "300"), ("EXPOSURE", "30"), ("EXPOINUS", "30000000"));
        folder.Add("dark_2.fits", ("EXPTIME", ""), ("EXPOINUS", "30000000"), ("DATE-OBS", "'2025-10-04T22:00:00.5'"));
        Assert.Equal([30.0, null], folder.Read().Frames.Select(f => f.ExposureSeconds));
    }

    [Fact]
    public void ABiasMayHaveNoExposureButNotALongOne()
    {
        folder.Add("bias_1.fits", ("IMAGETYP", "'Bias'"), ("EXPTIME", "0"));
        Assert.Empty(folder.Read().Findings);
        folder.Add("bias_2.fits", ("IMAGETYP", "'Bias'"), ("EXPTIME", "300"), ("DATE-OBS", "'2025-10-04T22:00:00.5'"));
        Assert.Equal(
            "1 frame marked bias with an exposure of 300 s: a bias has the shortest exposure there is; if these "
                + "are darks, correct column kind of the capture table.",
            Assert.Single(folder.Read().Findings).Message
        );
    }

    [Fact]
    public void FlatsSavedAsLightsAreToldByTheirNames()
    {
        folder.AddSeries("flats/panel", 3, "2025-10-04T19:00:00", _ => [("IMAGETYP", "'Light'"), ("EXPTIME", "2.0")]);
        Inventory inventory = folder.Read();
        Assert.All(inventory.Frames, f => Assert.Equal(FrameKind.Light, f.Kind));
        Finding finding = Assert.Single(inventory.Findings);
        Assert.Equal(("kind-contradicts-name", 3), (finding.Code, finding.Frames.Count));
    }

    [Fact]
    public void NamesSayTheKindOnlyWhenAsked()
    {
        folder.Add("darks/x_1.fits", ("IMAGETYP", ""));
        Inventory silent = folder.Read();
        Assert.Equal(FrameKind.Unknown, Assert.Single(silent.Frames).Kind);
        Assert.Equal(
            "No frame kind (IMAGETYP) in 1 frame; no measurement works without it: fill in column kind of the "
                + "capture table, or use the file or folder names, which say dark.",
            Assert.Single(silent.Findings).Message
        );

        Inventory asked = folder.Read(new InventoryOptions { NamesSay = true });
        Assert.Equal(FrameKind.Dark, Assert.Single(asked.Frames).Kind);
        Assert.Equal(
            (
                "kind-from-name",
                "The kind of 1 frame was taken from file or folder names, as asked; nothing in the headers confirms "
                    + "it."
            ),
            (Assert.Single(asked.Findings).Code, asked.Findings[0].Message)
        );
    }

    [Fact]
    public void TheFolderThatWasGivenSpeaksToo()
    {
        folder.Add("darks/300s/x_1.fits", ("IMAGETYP", ""));
        Inventory inventory = FrameInventory.Read([folder.Full("darks")], new InventoryOptions { NamesSay = true });
        Assert.Equal(
            ("300s/x_1.fits", FrameKind.Dark),
            (Assert.Single(inventory.Frames).Name, inventory.Frames[0].Kind)
        );
    }

    [Theory]
    [InlineData("IMAGETYP", "'Master Dark'")]
    [InlineData("NCOMBINE", "20")]
    public void StacksAreLeftOut(string keyword, string value)
    {
        folder.Add("dark_1.fits");
        folder.Add("m.fits", (keyword, value));
        Inventory inventory = folder.Read();
        Assert.Equal(["dark_1.fits"], inventory.Frames.Select(f => f.Name));
        Assert.Equal(
            $"It is a stack of several frames ({keyword} = {value}), not a raw frame.",
            Assert.Single(inventory.Rejected).Reason
        );
        Assert.Equal(
            "1 file left out as stacks of several frames (m.fits): noise is measured on raw frames only; if a "
                + "header is wrong, give the kind in the capture table.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void BinningThatChangesHalfWayIsToldAndNeverPooled()
    {
        folder.AddSeries("dark", 6, "2025-10-04T21:00:00", i =>
            [("XBINNING", i < 4 ? "1" : "2"), ("YBINNING", i < 4 ? "1" : "2")]
        );
        Inventory inventory = folder.Read();
        Assert.Equal([("1x1", 4), ("2x2", 2)], inventory.Sets.Select(s => (s.Settings.Binning, s.Frames.Count)));
        Assert.Equal(
            "The binning changes of Tarn-9M: 1x1 in 4 frames, 2x2 in 2 frames; frames that differ in it are never "
                + "pooled or compared. Correct the capture table if it did not really change, or take the missing frames "
                + "at each value that you use.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void GainThatIsMissingHalfWayIsToldAndNeverPooled()
    {
        folder.AddSeries("dark", 5, "2025-10-04T21:00:00", i => i < 3 ? [] : [("GAIN", "")]);
        Inventory inventory = folder.Read();
        Assert.Equal([2, 3], inventory.Sets.Select(s => s.Frames.Count).Order());
        Assert.Equal(
            (
                "gain-missing",
                "No gain (GAIN or ISOSPEED) in 2 frames of 5 of Tarn-9M: these form sets of their own; fill in column "
                    + "gain of the capture table to pool them with the others."
            ),
            (Assert.Single(inventory.Findings).Code, inventory.Findings[0].Message)
        );
    }

    [Fact]
    public void SettingsWithTheirOwnBiasFramesAreMeant()
    {
        folder.AddSeries("bias", 4, "2025-10-04T21:00:00", i =>
            [("IMAGETYP", "'Bias'"), ("EXPTIME", "0"), ("OFFSET", i < 2 ? "30" : "50")]
        );
        Finding finding = Assert.Single(folder.Read().Findings);
        Assert.Equal(
            (
                Severity.Note,
                "The offset changes of Tarn-9M: 30 in 2 frames, 50 in 2 frames; each is measured by itself."
            ),
            (finding.Severity, finding.Message)
        );
    }

    [Fact]
    public void AFrameFromAnotherCameraIsTold()
    {
        folder.AddSeries("dark", 3, "2025-10-04T21:00:00", _ => []);
        folder.Add("stray.fits", ("INSTRUME", "'Fell-24C'"), ("DATE-OBS", "'2025-10-04T23:00:00.5'"));
        Inventory inventory = folder.Read();
        Assert.Equal(2, inventory.Sets.Count);
        Finding finding = Assert.Single(inventory.Findings);
        Assert.Equal(
            "Frames of 2 cameras: Tarn-9M (3 frames), Fell-24C (1 frame). They are never pooled; give the frames "
                + "of one camera at a time, or leave the others out with column use of the capture table.",
            finding.Message
        );
        Assert.Equal(["stray.fits"], finding.Frames);
    }

    [Fact]
    public void AnOddSizeIsTold()
    {
        folder.AddSeries("dark", 3, "2025-10-04T21:00:00", _ => []);
        folder.AddSized("cropped.fits", 2, 2, ("DATE-OBS", "'2025-10-04T23:00:00.5'"));
        Inventory inventory = folder.Read();
        Assert.Equal(2, inventory.Sets.Count);
        Assert.Equal(
            "Frames of 2 sizes of Tarn-9M at binning 1x1: 4 × 2 px in 3 frames, 2 × 2 px in 1 frame; they are "
                + "never pooled. If the camera's crop mode was changed, give the frames of each size alone; leave out those "
                + "from another camera.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void AFlippedFilterPatternIsToldAndNeverPooled()
    {
        folder.AddSeries("dark", 3, "2025-10-04T21:00:00", i =>
            [("BAYERPAT", "'RGGB'"), ("ROWORDER", i < 2 ? "'TOP-DOWN'" : "'BOTTOM-UP'")]
        );
        Inventory inventory = folder.Read();
        Assert.Equal(2, inventory.Sets.Count);
        Assert.Equal(
            "2 colour filter patterns of Tarn-9M: RGGB in 2 frames, GBRG in 1 frame; some are flipped or cropped "
                + "by an odd number of pixels, so they are never pooled.",
            Assert.Single(inventory.Findings).Message
        );
    }

    [Fact]
    public void OnlyLocalTimeIsNoTime()
    {
        folder.Add("dark_1.fits", ("DATE-OBS", ""), ("DATE-LOC", "'2025-10-04T23:00:00'"));
        Inventory inventory = folder.Read();
        Assert.Null(Assert.Single(inventory.Frames).StartUtc);
        Assert.Equal("time-local-only", Assert.Single(inventory.Findings).Code);
    }
}
