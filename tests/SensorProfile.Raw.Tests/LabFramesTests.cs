using SensorProfile.Fits;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests;

/// <summary>Real frames keep every sample when they are rewritten as DNG in any form.</summary>
public sealed class LabFramesTests
{
    [DataFact("lab-12bit")]
    public void FramesOfTheLaboratoryComeBackFromEveryForm()
    {
        foreach (string name in new[] { "bias", "dark", "flat" })
        {
            string path = Directory
                .GetFiles(TestData.Path("lab-12bit/" + name), "*.fits")
                .Order(StringComparer.Ordinal)
                .First();
            using FitsFile fits = FitsFile.Open(path);
            FitsHdu image = fits.RequireFirstImage();
            var samples = new ushort[image.Width * image.Height];
            image.ReadRows(0, samples);
            var frame = new DngFrame
            {
                Width = image.Width,
                Height = image.Height,
                BitsPerSample = 16,
                Samples = samples,
            };
            foreach ((string form, DngForm how) in TestFrames.Forms)
                Assert.True(
                    TestFrames.Read(TestFrames.Bytes(frame, how)).AsSpan().SequenceEqual(samples),
                    $"{path}, {form}"
                );
        }
    }
}
