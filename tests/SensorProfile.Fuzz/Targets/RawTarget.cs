using SensorProfile.Raw;
using SensorProfile.Raw.Tests;
using SensorProfile.Raw.Tests.Facts;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Fuzz.Targets;

/// <summary>DNG and TIFF mosaics in every form that can be written.</summary>
internal static class RawTarget
{
    private const long MostSamples = 1_000_000;

    public static Target Make() =>
        new(
            "DNG and TIFF",
            [.. Seeds()],
            [.. "II*\0 MM\0* Exif\0\0".Split(' ').Select(System.Text.Encoding.ASCII.GetBytes)],
            InputForm.Tiff,
            Read
        )
        {
            MostBytes = 200L << 20,
        };

    private static IEnumerable<byte[]> Seeds()
    {
        int seed = 1;
        foreach (DngForm form in TestFrames.Forms.Values)
        {
            DngFrame frame = TestFrames.Noisy(32, 28, 12, seed++) with
            {
                ActiveArea = new RawArea(2, 4, 26, 30),
                MaskedAreas = [new RawArea(0, 0, 2, 32)],
                LinearisationTable =
                    seed % 3 == 0 ? [.. Enumerable.Range(0, 4096).Select(code => (ushort)(code * 2))] : null,
            };
            yield return TestFrames.Bytes(frame, form);
            if (seed % 5 == 0)
                yield return BigTiff.From(TestFrames.Bytes(frame, form));
        }
        yield return MakerNoteFiles.Bytes(temperature: 31);
    }

    private static bool Read(byte[] bytes)
    {
        try
        {
            using RawFile file = RawFile.Open(new MemoryBytes(bytes));
            Read(file);
            return true;
        }
        catch (RawFormatException refusal)
        {
            if (!refusal.Message.StartsWith("test.dng", StringComparison.Ordinal))
                throw new InvalidOperationException("The refusal does not name the file.", refusal);
            return false;
        }
    }

    private static void Read(RawFile file)
    {
        RawMosaic mosaic = file.Mosaic;
        long rows = Math.Min(mosaic.SensorHeight, MostSamples / mosaic.SensorWidth);
        for (int row = 0; row < rows; row += 16)
        {
            int count = Math.Min(16, mosaic.SensorHeight - row);
            file.ReadSensorRows(row, new ushort[count * mosaic.SensorWidth]);
        }
        var last = new ushort[mosaic.Width];
        file.Park();
        file.ReadRows(mosaic.Height > 500 ? 0 : mosaic.Height - 1, last);
        mosaic.Linearisation?.Apply(last);
        _ = mosaic.BlackLevel?.At(mosaic.Height - 1, mosaic.Width - 1);
    }
}
