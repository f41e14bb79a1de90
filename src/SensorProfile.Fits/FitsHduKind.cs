namespace SensorProfile.Fits;

/// <summary>What an HDU holds.</summary>
public enum FitsHduKind
{
    /// <summary>A header without data.</summary>
    NoData,

    /// <summary>An image (an array of pixels).</summary>
    Image,

    /// <summary>A tile-compressed image, kept in a binary table.</summary>
    CompressedImage,

    /// <summary>A table, ASCII or binary; listed, not read.</summary>
    Table,

    /// <summary>Anything else; listed, not read.</summary>
    Other,
}
