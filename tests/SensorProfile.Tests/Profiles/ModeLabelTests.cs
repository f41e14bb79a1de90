using SensorProfile.Profiles;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Tests.Profiles;

public class ModeLabelTests
{
    public static TheoryData<ModeSettings, string, string> Settings =>
        new()
        {
            { new ModeSettings(), "one setting", "mode" },
            {
                new ModeSettings { Gain = 100, Offset = 30 },
                "gain 100, offset 30",
                "gain-100-offset-30"
            },
            {
                new ModeSettings { Gain = 0.5 },
                "gain 0.5",
                "gain-0.5"
            },
            {
                new ModeSettings { Iso = 800, Binning = "2x2" },
                "ISO 800, binned 2x2",
                "iso-800-binning-2x2"
            },
            {
                new ModeSettings { Readout = "High/Größe ..\\" },
                "read-out High/Größe ..\\",
                "readout-high-gr--e-..-"
            },
        };

    [Theory, MemberData(nameof(Settings))]
    public void SettingsHaveANameToReadAndANameForAFolder(ModeSettings settings, string text, string folder)
    {
        Assert.Equal(text, ModeLabel.Text(settings));
        Assert.Equal(folder, ModeLabel.Folder(settings));
    }

    [Fact]
    public void FoldersOfEqualNamesAreNumbered() =>
        Assert.Equal(
            ["gain-1", "gain-1-2", "gain-1-3"],
            ModeLabel.Folders([
                .. Enumerable.Range(0, 3).Select(_ => new ModeProfile { Settings = new ModeSettings { Gain = 1 } }),
            ])
        );
}
