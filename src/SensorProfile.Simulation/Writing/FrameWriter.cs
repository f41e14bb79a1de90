using SensorProfile.Fits;
using SensorProfile.Raw.Writing;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Writing;

/// <summary>
/// Writes one simulated frame with unsigned 16-bit integers: as DNG when the name ends in .dng, otherwise as FITS.
/// </summary>
internal static class FrameWriter
{
    /// <summary>Whether the masked border is written as well.</summary>
    public static bool HasBorder(CameraDescription camera, SimulatedFrame frame) =>
        IsDng(frame.FileName) && camera.MaskedBorder is not { Left: 0, Top: 0 };

    /// <summary>Writes the file; it appears under its name only when complete, faults included.</summary>
    public static void Write(
        string path,
        CameraDescription camera,
        SimulatedFrame frame,
        ushort[] pixels,
        bool overwrite
    )
    {
        bool isDng = IsDng(path);
        if (isDng && frame.Faults.Any(fault => fault.ReplaceKeywords.Count > 0))
        {
            throw new CameraDescriptionException(
                "camera description",
                "$.faults",
                "a DNG has no keywords to replace.",
                "Write the night as FITS, or leave replaceKeywords out."
            );
        }
        bool spoilt = frame.Faults.Any(f => f.CutBytes > 0 || f.ReplaceKeywords.Count > 0);
        if (!spoilt)
        {
            WriteWhole(path, isDng, camera, frame, pixels, overwrite);
            return;
        }
        if (!overwrite && File.Exists(path))
        {
            throw new IOException($"{path} exists and was not replaced.");
        }
        string whole = path + ".whole";
        try
        {
            WriteWhole(whole, isDng, camera, frame, pixels, overwrite: true);
            byte[] bytes = File.ReadAllBytes(whole);
            int cut = 0;
            foreach (Fault fault in frame.Faults)
            {
                HeaderFaults.Apply(fault, bytes);
                cut += fault.CutBytes;
            }
            AtomicFile.Write(path, stream => stream.Write(bytes, 0, Math.Max(0, bytes.Length - cut)));
        }
        finally
        {
            File.Delete(whole);
        }
    }

    private static bool IsDng(string path) => path.EndsWith(".dng", StringComparison.OrdinalIgnoreCase);

    private static void WriteWhole(
        string path,
        bool isDng,
        CameraDescription camera,
        SimulatedFrame frame,
        ushort[] pixels,
        bool overwrite
    )
    {
        if (isDng)
        {
            DngWriter.Write(path, DngFrames.Of(camera, frame, pixels), DngFrames.FormOf(camera), overwrite);
            return;
        }
        var image = new FitsImage<ushort>(camera.Width, camera.Height, pixels, FrameCards.Of(camera, frame));
        FitsWriter.Write(path, image, overwrite, durable: false);
    }
}
