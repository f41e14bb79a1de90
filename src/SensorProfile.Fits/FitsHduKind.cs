namespace SensorProfile.Fits;

/// <summary>Kind of content of an HDU.</summary>
public enum FitsHduKind
{
    /// <summary>A header without data.</summary>
    NoData,

    /// <summary>An image (an array of pixels).</summary>
    Image,

    /// <summary>A tile-compressed image, stored in a binary table.</summary>
    CompressedImage,

    /// <summary>A table, ASCII or binary; listed, not read.</summary>
    Table,

    /// <summary>Anything else; listed, not read.</summary>
    Other,
}
