using SensorProfile.Frames;
using SensorProfile.Frames.Headers;

namespace SensorProfile.Tests.Frames.Headers;

public class KindWordsTests
{
    [Theory]
    [InlineData("bias", FrameKind.Bias)]
    [InlineData("Bias Frame", FrameKind.Bias)]
    [InlineData("BIAS_FRAME", FrameKind.Bias)]
    [InlineData("zero", FrameKind.Bias)]
    [InlineData("Dark", FrameKind.Dark)]
    [InlineData("dark-frame", FrameKind.Dark)]
    [InlineData("DARKS", FrameKind.Dark)]
    [InlineData("FLAT", FrameKind.Flat)]
    [InlineData("Flat Field", FrameKind.Flat)]
    [InlineData("flat frame", FrameKind.Flat)]
    [InlineData("Sky Flat", FrameKind.Flat)]
    [InlineData("Dark Flat", FrameKind.DarkFlat)]
    [InlineData("FLATDARK", FrameKind.DarkFlat)]
    [InlineData("flat_dark_frame", FrameKind.DarkFlat)]
    [InlineData("Light Frame", FrameKind.Light)]
    [InlineData("LIGHT", FrameKind.Light)]
    [InlineData("object", FrameKind.Light)]
    [InlineData("  Dark   Frame ", FrameKind.Dark)]
    [InlineData("focus", FrameKind.Unknown)]
    [InlineData("", FrameKind.Unknown)]
    public void UsualSpellingsAreUnderstood(string text, FrameKind kind) =>
        Assert.Equal((kind, false), KindWords.Parse(text));

    [Theory]
    [InlineData("Master Dark", FrameKind.Dark)]
    [InlineData("MASTERBIAS", FrameKind.Bias)]
    [InlineData("master_flat_frame", FrameKind.Flat)]
    [InlineData("Stacked Dark", FrameKind.Dark)]
    [InlineData("superbias", FrameKind.Bias)]
    public void StacksAreRecognised(string text, FrameKind kind) => Assert.Equal((kind, true), KindWords.Parse(text));

    [Theory]
    [InlineData("bias/frame_001.fits", FrameKind.Bias)]
    [InlineData("2025/darks/M_0001.fits", FrameKind.Dark)]
    [InlineData("flats/dark_001.fits", FrameKind.Dark)] // the file name is nearer than the folder
    [InlineData("dark-flats/x_1.fits", FrameKind.DarkFlat)]
    [InlineData("FlatDark_001.fits", FrameKind.DarkFlat)]
    [InlineData("dark300s_001.fits", FrameKind.Dark)]
    [InlineData("darkness_1.fits", null)]
    [InlineData("Dark Sky Park/x_1.fits", null)]
    [InlineData("bias_vs_dark.fits", null)] // says two things
    [InlineData("gain100_offset30_0001.fits", null)]
    [InlineData("object_12.fits", null)]
    public void NamesSpeakInWholeWords(string name, FrameKind? kind) => Assert.Equal(kind, KindWords.FromName(name));
}
