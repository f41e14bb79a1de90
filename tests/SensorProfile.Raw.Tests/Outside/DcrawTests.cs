using SensorProfile.Raw.Writing;

namespace SensorProfile.Raw.Tests.Outside;

/// <summary>dcraw reads what we write, and we read what it reads, sample by sample.</summary>
/// <remarks>dcraw 9.28 reads wrong without a word: uncompressed mosaics in several strips or in tiles, and lossless
/// JPEG in several strips
/// (it takes the first strip for all of it); Deflate it does not know. Those forms are held by
/// <see cref="LibTiffTests"/>.</remarks>
public sealed class DcrawTests
{
    private static readonly string[] formsThatItReads =
    [
        "words",
        "words, big-endian, preview",
        "packed",
        "lossless JPEG",
        "lossless JPEG, two components, tiles",
        "lossless JPEG, two components, two rows",
    ];

    [NeedsProgramFact("dcraw", "dcraw")]
    public void DcrawReadsTheSamplesOfEveryFormThatItKnows()
    {
        using var folder = new TemporaryFolder();
        foreach (int bits in new[] { 10, 12, 14, 16 })
        {
            DngFrame frame = TestFrames.Noisy(150, 98, bits) with { ActiveArea = new RawArea(2, 4, 96, 146) };
            foreach (string form in formsThatItReads)
                Assert.True(
                    frame.Samples.Span.SequenceEqual(ReadByDcraw(folder, frame, TestFrames.Forms[form])),
                    $"{form}, {bits} bits"
                );
        }
    }

    [NeedsProgramFact("dcraw", "dcraw")]
    public void DcrawReadsEveryPredictorAndRestarts()
    {
        using var folder = new TemporaryFolder();
        DngFrame frame = TestFrames.Noisy(64, 48, 14);
        for (int predictor = 1; predictor <= 7; predictor++)
        for (int components = 1; components <= 2; components++)
            // dcraw goes on predicting from above behind a restart, against T.81, H.1.2.1
            foreach (int restart in predictor == 1 ? new[] { 0, 6 } : [0])
            {
                var form = new DngForm
                {
                    Compression = RawCompression.LosslessJpeg,
                    JpegPredictor = predictor,
                    JpegComponents = components,
                    JpegRestartLines = restart,
                };
                Assert.True(frame.Samples.Span.SequenceEqual(ReadByDcraw(folder, frame, form)), form.ToString());
            }
    }

    [NeedsDataAndDcrawFact]
    public void TheRealFileIsReadAsDcrawReadsIt()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("still.dng");
        File.Copy(TestData.Path("raw/still-14bit.dng"), path);
        using RawFile file = RawFile.Open(path);
        var active = new ushort[file.Mosaic.Width * file.Mosaic.Height];
        file.ReadRows(0, active);
        Assert.Equal(Document(folder, path, "-D"), active);
        var sensor = new ushort[file.Mosaic.SensorWidth * file.Mosaic.SensorHeight];
        file.ReadSensorRows(0, sensor);
        Assert.Equal(Document(folder, path, "-E"), sensor);
    }

    private static ushort[] ReadByDcraw(TemporaryFolder folder, DngFrame frame, DngForm form)
    {
        string path = folder.File("frame.dng");
        DngWriter.Write(path, frame, form, overwrite: true);
        return Document(folder, path, "-E");
    }

    /// <summary>The samples as dcraw has them in its document mode: -D without, -E with the masked borders.</summary>
    private static ushort[] Document(TemporaryFolder folder, string path, string mode)
    {
        string map = Path.ChangeExtension(path, "pgm");
        File.Delete(map);
        (int exit, string text) = ExternalTool.Run("dcraw", mode, "-4", "-t", "0", path);
        Assert.True(exit == 0 && File.Exists(map), text);
        return PortableGreyMap.Read(map).Samples;
    }
}

/// <summary>Left out, aloud, without the real raw file or without dcraw; failing then with CI=true.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NeedsDataAndDcrawFactAttribute : FactAttribute
{
    public NeedsDataAndDcrawFactAttribute() =>
        Skip = TestData.SkipReason("raw") ?? new NeedsProgramFactAttribute("dcraw", "dcraw").Skip;
}
