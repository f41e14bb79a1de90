using System.Globalization;
using System.Text;
using SensorProfile.Frames;

namespace SensorProfile.Tests.Frames;

/// <summary>
/// The program runs without ICU; its own composition is held against ICU's, which the tests have
/// (letters that the data of Unicode 14 does not know are left out by both).
/// </summary>
public sealed class ComposedLettersTests
{
    private static readonly int[] marks = [0x300, 0x308, 0x323, 0x327, 0x345, 0x3099, 0x5B0, 0x64B, 0x1161, 0x11A8];

    [Fact]
    public void TheTestsHaveWhatTheyCompareWith() => Assert.Equal("ü", "u\u0308".Normalize(NormalizationForm.FormC));

    [Fact]
    public void EveryLetterAloneAndUnderMarksIsComposedAsIcuDoes()
    {
        foreach (int letter in Letters())
        {
            string alone = char.ConvertFromUtf32(letter);
            Check(alone);
            Check(alone.Normalize(NormalizationForm.FormD));
            foreach (int mark in marks)
                Check(alone + char.ConvertFromUtf32(mark));
        }
    }

    [Fact]
    public void MarksInAnyOrderAreComposedAsIcuDoes()
    {
        Random random = new(11);
        int[] pool = [.. Letters().Where(c => c is < 0x2000 or (>= 0x3040 and < 0x3100)), .. marks, .. marks];
        for (int i = 0; i < 20_000; i++)
        {
            StringBuilder text = new();
            for (int n = 0; n < 6; n++)
                text.Append(char.ConvertFromUtf32(pool[random.Next(pool.Length)]));
            foreach (int mark in random.GetItems(marks, 3))
                text.Append(char.ConvertFromUtf32(mark));
            Check(text.ToString());
        }
    }

    [Fact]
    public void HalfASurrogatePairIsRefused() =>
        Assert.Throws<ArgumentException>(() => ComposedLetters.Compose("dark\uD800.fits"));

    private static void Check(string text) =>
        Assert.Equal(text.Normalize(NormalizationForm.FormC), ComposedLetters.Compose(text));

    private static IEnumerable<int> Letters() =>
        Enumerable
            .Range(0, 0x30000)
            .Where(c => c is < 0xD800 or > 0xDFFF)
            .Where(c =>
                CharUnicodeInfo.GetUnicodeCategory(c) is not UnicodeCategory.OtherNotAssigned && !IsNewerThanTheData(c)
            );

    /// <summary>Letters of Unicode 15 that are marks, and those of Unicode 16 that are composed.</summary>
    private static bool IsNewerThanTheData(int c) =>
        c
            is 0x897
                or (>= 0x105C0 and <= 0x105FF)
                or (>= 0x10D40 and <= 0x10D8F)
                or (>= 0x10EFC and <= 0x10EFF)
                or (>= 0x11380 and <= 0x113FF)
                or (>= 0x11F00 and <= 0x11F5F)
                or (>= 0x16100 and <= 0x1613F)
                or (>= 0x16D40 and <= 0x16D7F)
                or 0x1E08F
                or (>= 0x1E4D0 and <= 0x1E4FF)
                or (>= 0x1E5D0 and <= 0x1E5FF);
}
