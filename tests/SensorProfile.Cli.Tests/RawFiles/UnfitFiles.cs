using MetadataExtractor.Formats.Exif;
using SensorProfile.Raw;
using SensorProfile.Raw.Containers;
using SensorProfile.Raw.Jpeg;
using SensorProfile.Raw.Writing;

namespace SensorProfile.Cli.Tests.RawFiles;

/// <summary>Raw files, pictures and other files by which no sensor can be measured, as cameras and programs write them.</summary>
internal static class UnfitFiles
{
    private const string Notes = "MakernoteDirectory";

    /// <summary>Writes one of each; the name and a part of what must be said of it.</summary>
    public static IReadOnlyDictionary<string, string[]> Write(string folder)
    {
        void Add(
            string name,
            Action<TiffEntries>? edit = null,
            Action<TiffEntries>? editExif = null,
            int bits = 12,
            byte[]? strip = null
        ) => File.WriteAllBytes(Path.Combine(folder, name), Bytes(edit, editExif, bits, strip));
        DarkSubtracted(Path.Combine(folder, "subtracted.dng"));
        Add("reduced.dng", tags => tags.Fractions((Tag)50935, signed: false, new Fraction(1, 2)));
        Add("composite.dng", editExif: exif => exif.Shorts(Tag.CompositeImage, 3));
        Add("linear.dng", tags => Linear(tags, 3));
        Add("lossy.dng", tags => tags.Shorts(Tag.Compression, 34892));
        Add("six.dng", tags => tags.Shorts(Tag.CFARepeatPatternDim, 6, 6));
        Add("four.dng", tags => tags.Shorts(Tag.CFARepeatPatternDim, 4, 4));
        Add("halves.dng", tags => tags.Longs((Tag)50975, 2));
        Add("picture.tif", tags => Plain(tags, photometric: 2, samples: 3));
        Add("eight.tif", tags => Plain(tags, photometric: 1, samples: 1), bits: 8);
        byte[] whole = Bytes(null, null, 12);
        File.WriteAllBytes(Path.Combine(folder, "cut.dng"), whole.AsSpan(0, whole.Length - 300).ToArray());
        File.WriteAllBytes(Path.Combine(folder, "empty.nef"), []);
        File.WriteAllBytes(Path.Combine(folder, "empty.raf"), []);
        byte[] noise = new byte[5000];
        new Random(7).NextBytes(noise);
        File.WriteAllBytes(Path.Combine(folder, "noise.dng"), noise);
        File.WriteAllBytes(Path.Combine(folder, "big.tif"), [0x49, 0x49, 43, 0, 4, 0, 0, 0, .. new byte[64]]);
        File.WriteAllBytes(Path.Combine(folder, "layers.x3f"), [.. "FOVb"u8, .. new byte[60]]);
        byte[] jpeg = LosslessJpegEncoder.Encode(new ushort[32 * 24], 32, 12, new DngForm());
        jpeg[3] = 0xC0; // the frame header of a picture
        Add(
            "baseline.dng",
            tags =>
            {
                tags.Shorts(Tag.Compression, 7);
                tags.Longs(Tag.StripByteCounts, jpeg.Length);
            },
            strip: jpeg
        );
        return Said;
    }

    /// <summary>What must stand in the line about each file: the reason, then the remedy.</summary>
    private static readonly Dictionary<string, string[]> Said = new()
    {
        ["subtracted.dng"] = ["already subtracted a dark of its own", "Switch off long-exposure noise reduction"],
        ["reduced.dng"] = ["noise was reduced", "as the camera wrote them"],
        ["composite.dng"] = ["several exposures", "Switch off pixel shift and multiple exposures"],
        ["linear.dng"] = ["demosaiced (3 colours in every pixel)", "without demosaicing"],
        ["lossy.dng"] = ["with loss", "without lossy compression"],
        ["six.dng"] = ["repeats every 6 × 6 pixels", "leave it out"],
        ["four.dng"] = ["repeats every 4 × 4 pixels", "leave it out"],
        ["halves.dng"] = ["stored as 2 smaller ones", "without interleaving"],
        ["picture.tif"] = ["finished picture", "Take the raw file from the camera"],
        ["eight.tif"] = ["expected 16 bits per sample, found 8", "Save the frame with 16 bits"],
        ["cut.dng"] = ["byte ", "again"],
        ["empty.nef"] = ["is empty", "Copy it again"],
        ["empty.raf"] = ["is empty", "Copy it again"],
        ["noise.dng"] = ["TIFF", "leave it out"],
        ["big.tif"] = ["BigTIFF", "ordinary TIFF or DNG"],
        ["layers.x3f"] = ["three colours in every pixel", "leave it out"],
        ["baseline.dng"] = ["compressed with loss (JPEG, FFC0)", "without lossy compression"],
    };

    private static byte[] Bytes(
        Action<TiffEntries>? edit,
        Action<TiffEntries>? editExif,
        int bits,
        byte[]? strip = null
    )
    {
        var random = new Random(5);
        var frame = new DngFrame
        {
            Width = 32,
            Height = 24,
            Samples = Enumerable.Range(0, 32 * 24).Select(_ => (ushort)random.Next(256)).ToArray(),
            BitsPerSample = bits,
            ColourFilter = new RawColourFilter(RawColour.Red, RawColour.Green, RawColour.Green, RawColour.Blue),
            Facts = new RawFacts
            {
                Camera = "Fell-24C",
                ExposureSeconds = 30,
                Iso = 800,
            },
        };
        using var stream = new MemoryStream();
        var file = new TiffBuilder(stream, bigEndian: false);
        TiffEntries mosaic = file.NewDirectory();
        SegmentWriter.Write(file, mosaic, frame, new DngForm());
        DngTags.AddMosaic(mosaic, frame);
        DngTags.AddCamera(mosaic, frame);
        TiffEntries exif = file.NewDirectory();
        DngTags.AddExif(exif, frame.Facts);
        editExif?.Invoke(exif);
        mosaic.Longs(Tag.ExifIFD, file.Append(exif));
        edit?.Invoke(mosaic);
        if (strip is not null)
            mosaic.Longs(Tag.StripOffsets, file.Append(strip));
        file.Finish(file.Append(mosaic));
        return stream.ToArray();
    }

    private static void Linear(TiffEntries tags, int samples)
    {
        tags.Shorts(Tag.PhotometricInterpretation, 34892);
        tags.Shorts(Tag.SamplesPerPixel, samples);
    }

    private static void Plain(TiffEntries tags, int photometric, int samples)
    {
        tags.Shorts(Tag.PhotometricInterpretation, photometric);
        tags.Shorts(Tag.SamplesPerPixel, samples);
        tags.Longs(Tag.DNGVersion, []);
    }

    /// <summary>
    /// Notes in a form that the reading library knows under the name of the setting: the library is asked which maker
    /// has it, so that no name stands here.
    /// </summary>
    private static void DarkSubtracted(string path)
    {
        foreach ((string maker, int tag) in Kinds("Long Exposure Noise Reduction"))
            for (int value = 0; value < 6; value++)
            {
                var note = new byte[18];
                note[0] = 1;
                BitConverter.TryWriteBytes(note.AsSpan(2), (ushort)tag);
                (note[4], note[6], note[10]) = (3, 1, (byte)value);
                File.WriteAllBytes(
                    path,
                    Bytes(
                        tags => tags.Text(Tag.Make, maker),
                        exif => exif.Bytes(Tag.MakerNote, TiffType.Undefined, note),
                        12
                    )
                );
                using RawFile file = RawFile.Open(path);
                if (file.Facts.Treatments.Any(t => t.Kind == RawTreatmentKind.DarkSubtracted))
                    return;
            }
        throw new InvalidOperationException("No maker's notes with this setting begin with a directory any more.");
    }

    private static IEnumerable<(string Maker, int Tag)> Kinds(string name) =>
        from type in typeof(ExifDirectoryBase).Assembly.GetTypes()
        where type.Name.EndsWith(Notes, StringComparison.Ordinal) && !type.IsAbstract
        let directory = (MetadataExtractor.Directory)Activator.CreateInstance(type)!
        from tag in Enumerable.Range(0, 65_536)
        where directory.HasTagName(tag) && directory.GetTagName(tag) == name
        let words = type.Name.Substring(0, type.Name.Length - Notes.Length)
        from length in Enumerable.Range(3, Math.Max(0, words.Length - 2))
        select (words.Substring(0, length).ToUpperInvariant(), tag);
}
