using System.Runtime.InteropServices;

namespace SensorProfile.Fits.Tests;

/// <summary>Reads an image into an array of its own physical type, through the reader that holds it exactly.</summary>
internal static class PhysicalPixels
{
    // the runtime lets a short[] pass for a ushort[], hence the second test
    public static T[] Read<T>(FitsHdu hdu)
        where T : unmanaged
    {
        var physical = new T[hdu.Width * hdu.Height];
        switch ((object)physical)
        {
            case ushort[] target when typeof(T) == typeof(ushort):
                hdu.ReadRows(0, target);
                break;
            case int[] target when typeof(T) == typeof(int):
                hdu.ReadRows(0, target);
                break;
            case long[] target when typeof(T) == typeof(long):
                hdu.ReadRows(0, target);
                break;
            case ulong[] target when typeof(T) == typeof(ulong):
                hdu.ReadRows(0, target);
                break;
            case float[] target when typeof(T) == typeof(float):
                hdu.ReadRows(0, target);
                break;
            case double[] target when typeof(T) == typeof(double):
                hdu.ReadRows(0, target);
                break;
            default:
                var wide = new long[physical.Length];
                hdu.ReadRows(0, wide);
                for (int i = 0; i < wide.Length; i++)
                {
                    long value = wide[i];
                    physical[i] = MemoryMarshal.Read<T>(MemoryMarshal.AsBytes(new ReadOnlySpan<long>(ref value)));
                }

                break;
        }

        return physical;
    }
}
