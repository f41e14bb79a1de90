namespace SensorProfile.Fits;

/// <summary>The codes of <see cref="FitsWarning"/>.</summary>
public static class FitsWarningCodes
{
    /// <summary>A number is written with a decimal comma.</summary>
    public const string DecimalComma = "decimal-comma";

    /// <summary>A value is not a string, logical, number or complex number.</summary>
    public const string MalformedValue = "malformed-value";

    /// <summary>A keyword appears twice with different values; the first one counts.</summary>
    public const string DuplicateKeyword = "duplicate-keyword";

    /// <summary>All mandatory keywords are present, but out of order.</summary>
    public const string KeywordOrder = "keyword-order";

    /// <summary>A mandatory keyword of an extension is missing; its usual value was assumed.</summary>
    public const string MissingKeyword = "missing-keyword";

    /// <summary>SIMPLE = F: the file declares that it does not follow the standard.</summary>
    public const string NotConforming = "not-conforming";

    /// <summary>Bytes other than printable ASCII in a header.</summary>
    public const string NonAscii = "non-ascii";

    /// <summary>Something other than blanks between END and the end of the header.</summary>
    public const string TextAfterEnd = "text-after-end";

    /// <summary>The last block is not padded to 2880 bytes.</summary>
    public const string MissingPadding = "missing-padding";

    /// <summary>Bytes after the last HDU that are not an extension.</summary>
    public const string ExtraBytes = "extra-bytes";

    /// <summary>BLANK in a floating-point image, where it has no meaning, or BLANK that is not an integer.</summary>
    public const string MeaninglessBlank = "meaningless-blank";

    /// <summary>BSCALE = 0: every pixel has the value of BZERO.</summary>
    public const string ZeroScale = "zero-scale";

    /// <summary>DATASUM or CHECKSUM contradicts the bytes.</summary>
    public const string ChecksumMismatch = "checksum-mismatch";

    /// <summary>An HDU of the file is unusable; the others are usable.</summary>
    public const string BrokenHdu = "broken-hdu";
}
