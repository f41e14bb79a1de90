namespace SensorProfile.Fits;

/// <summary>
/// The smallest type that holds every physical value of an image: BITPIX together with BSCALE and BZERO.
/// </summary>
public enum FitsPixelType
{
    /// <summary>BITPIX 8.</summary>
    UInt8,

    /// <summary>BITPIX 8 with BZERO −128.</summary>
    Int8,

    /// <summary>BITPIX 16.</summary>
    Int16,

    /// <summary>BITPIX 16 with BZERO 32768.</summary>
    UInt16,

    /// <summary>BITPIX 32.</summary>
    Int32,

    /// <summary>BITPIX 32 with BZERO 2147483648.</summary>
    UInt32,

    /// <summary>BITPIX 64.</summary>
    Int64,

    /// <summary>BITPIX 64 with BZERO 9223372036854775808.</summary>
    UInt64,

    /// <summary>BITPIX −32.</summary>
    Float32,

    /// <summary>BITPIX −64, and every image with any other scaling.</summary>
    Float64,
}
