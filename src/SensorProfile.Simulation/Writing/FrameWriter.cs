using SensorProfile.Fits;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Writing;

/// <summary>Writes one simulated frame as a FITS file of unsigned 16-bit integers.</summary>
internal static class FrameWriter
{
    /// <summary>Writes the file; its name appears only when it is complete, faults included.</summary>
    public static void Write(
        string path,
        CameraDescription camera,
        SimulatedFrame frame,
        ushort[] pixels,
        bool overwrite
    )
    {
        var image = new FitsImage<ushort>(camera.Width, camera.Height, pixels, FrameCards.Of(camera, frame));
        bool spoilt = frame.Faults.Any(f => f.CutBytes > 0 || f.ReplaceKeywords.Count > 0);
        if (!spoilt)
        {
            FitsWriter.Write(path, image, overwrite, durable: false);
            return;
        }
        if (!overwrite && File.Exists(path))
        {
            throw new IOException($"{path} exists and was not replaced.");
        }
        string whole = path + ".whole";
        try
        {
            FitsWriter.Write(whole, image, overwrite: true, durable: false);
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
}
