using System.Globalization;
using System.Text.Json;

namespace SensorProfile.Fits.Tests;

/// <summary>Every file of fits-zoo does what expected.json says of it.</summary>
public sealed class ZooTests
{
    public static TheoryData<string> Readable => Named(file => file.Class is "valid" or "valid-with-warning");

    public static TheoryData<string> Odd => Named(file => file.Class == "valid-with-warning");

    public static TheoryData<string> Malformed => Named(file => file.Class is "malformed" or "unsupported");

    [DataTheory("fits-zoo"), MemberData(nameof(Readable))]
    public void AReadableFileGivesItsPixels(string name)
    {
        using FitsFile file = FitsFile.Open(ZooFile.Path(name));
        Assert.Empty(file.Errors);
        Assert.Equal(ZooFile.Files[name].Hdus.Count, file.Hdus.Count);
        AssertHdus(file, ZooFile.Files[name]);
        if (ZooFile.Files[name].Class == "valid")
            Assert.Empty(file.Warnings);
    }

    [DataTheory("fits-zoo"), MemberData(nameof(Odd))]
    public void AnOddFileIsReadWithAWarningThatNamesThePlace(string name)
    {
        ZooFile expected = ZooFile.Files[name];
        using FitsFile file = FitsFile.Open(ZooFile.Path(name));
        List<FitsWarning> warnings = [.. file.Warnings];
        foreach (FitsHdu hdu in file.Hdus)
        {
            if (!hdu.VerifyChecksum(out FitsWarning? problem))
                warnings.Add(problem!);
        }

        if (expected.ErrorKind is null)
        {
            // lower-case exponents are met so often that nothing is said
            Assert.True(warnings.Count > 0 || name == "number-forms.fits", "no warning");
            return;
        }

        Assert.Contains(warnings, w =>
            (expected.ErrorCard is null || w.Location.Keyword == expected.ErrorCard)
            && (expected.ErrorHdu is null || w.Location.Hdu == expected.ErrorHdu)
            && (expected.ErrorOffset is null || w.Location.ByteOffset == expected.ErrorOffset)
        );
    }

    [DataTheory("fits-zoo"), MemberData(nameof(Malformed))]
    public void AMalformedFileIsRefusedAtThePlaceAndItsGoodHdusStayReadable(string name)
    {
        ZooFile expected = ZooFile.Files[name];
        FitsFormatException error;
        try
        {
            using FitsFile file = FitsFile.Open(ZooFile.Path(name));
            Assert.Equal(expected.Hdus.Count, file.Hdus.Count);
            AssertHdus(file, expected);
            error = Assert.Single(file.Errors);
            Assert.Contains(file.Warnings, w => w.Code == FitsWarningCodes.BrokenHdu && w.Location == error.Location);
        }
        catch (FitsFormatException e)
        {
            error = e;
            // a repeated NAXIS1: the file is refused, as its note allows
            Assert.True(expected.Hdus.Count == 0 || expected.ErrorKind == "duplicate-keyword", "a good HDU was lost");
        }

        Assert.StartsWith(error.Location.ToString() + ": ", error.Message, StringComparison.Ordinal);
        Assert.Equal(name, Path.GetFileName(error.Location.File));
        if (expected.ErrorHdu is not null)
            Assert.Equal(expected.ErrorHdu, error.Location.Hdu);
        if (expected.ErrorCard is not null)
            Assert.Equal(expected.ErrorCard, error.Location.Keyword);
        if (expected.ErrorOffset is not null && expected.ErrorKind != "missing-column")
            Assert.Equal(expected.ErrorOffset, error.Location.ByteOffset);
    }

    [DataFact("fits-zoo")]
    public void KeywordsHaveTheirValues()
    {
        foreach (var (name, expected) in ZooFile.Files.Where(pair => pair.Value.Keywords.Count > 0))
        {
            using FitsFile file = FitsFile.Open(ZooFile.Path(name));
            foreach (var (keyword, value) in expected.Keywords)
                AssertKeyword(file.Hdus[0].Header, keyword, value);
        }
    }

    [DataFact("fits-zoo")]
    public void ADecimalCommaIsUnderstoodAndCanBeSeen()
    {
        using FitsFile file = FitsFile.Open(ZooFile.Path("decimal-comma.fits"));
        FitsHeader header = file.Hdus[0].Header;
        Assert.Equal(
            (6.4e-5, 6.4e-5, -10.5),
            (header.Number("EXPTIME"), header.Number("EXPOSURE"), header.Number("CCD-TEMP"))
        );
        Assert.True(
            header.Card("EXPTIME")!.HasDecimalComma
                && header.Card("EXPOSURE")!.HasDecimalComma
                && header.Card("CCD-TEMP")!.HasDecimalComma
        );
        Assert.False(header.Card("GAIN")!.HasDecimalComma);
    }

    private static TheoryData<string> Named(Func<ZooFile, bool> wanted)
    {
        var names = new TheoryData<string>();
        if (TestData.Find("fits-zoo") is null)
            names.Add("(none)");
        else
            foreach (var (name, _) in ZooFile.Files.Where(pair => wanted(pair.Value)))
                names.Add(name);
        return names;
    }

    private static void AssertHdus(FitsFile file, ZooFile zoo)
    {
        foreach (JsonElement expected in zoo.Hdus)
        {
            FitsHdu hdu = file.Hdus.Single(h => h.Index == expected.GetProperty("index").GetInt32());
            Assert.Equal(
                expected.GetProperty("type").GetString(),
                hdu.Kind switch
                {
                    FitsHduKind.NoData => "no-data",
                    FitsHduKind.Image => "image",
                    FitsHduKind.CompressedImage => "compressed-image",
                    FitsHduKind.Table => "table",
                    _ => "other",
                }
            );
            Assert.Equal(expected.GetProperty("bitpix").GetInt32(), hdu.Bitpix);
            Assert.Equal(expected.GetProperty("axes").EnumerateArray().Select(axis => axis.GetInt64()), hdu.Axes);
            if (expected.TryGetProperty("bscale", out JsonElement scale))
                Assert.Equal(double.Parse(scale.GetString()!, CultureInfo.InvariantCulture), hdu.BScale);
            if (expected.TryGetProperty("bzero", out JsonElement zero))
                Assert.Equal(double.Parse(zero.ToString(), CultureInfo.InvariantCulture), hdu.BZero);
            if (hdu.Kind != FitsHduKind.CompressedImage)
                Assert.Equal(expected.GetProperty("name").GetString(), hdu.Name);
            if (expected.TryGetProperty("pixels", out _))
                ZooPixels.AssertAgree(hdu, expected);
        }
    }

    private static void AssertKeyword(FitsHeader header, string keyword, JsonElement expected)
    {
        FitsCard card = header.Card(keyword)!;
        Assert.Equal(
            expected.GetProperty("type").GetString(),
            card.Kind == FitsValueKind.Text ? "string" : card.Kind.ToString().ToLowerInvariant()
        );
        JsonElement value = expected.GetProperty("value");
        switch (card.Kind)
        {
            case FitsValueKind.Text:
                Assert.Equal(value.GetString(), card.Text);
                break;
            case FitsValueKind.Logical:
                Assert.Equal(value.GetBoolean(), card.Logical);
                break;
            case FitsValueKind.Real:
                Assert.Equal(double.Parse(value.GetString()!, CultureInfo.InvariantCulture), card.Number);
                break;
            case FitsValueKind.Integer:
                Assert.Equal(
                    System.Numerics.BigInteger.Parse(value.GetString()!, CultureInfo.InvariantCulture),
                    System.Numerics.BigInteger.Parse(card.Value, CultureInfo.InvariantCulture)
                );
                break;
            case FitsValueKind.Complex:
                Assert.Equal($"({value[0].GetString()}, {value[1].GetString()})", card.Value);
                break;
            default:
                Assert.Equal("", card.Value);
                break;
        }
    }
}
