namespace SensorProfile.Fits.Headers;

/// <summary>Notation of a number.</summary>
internal enum NumberForm
{
    /// <summary>Not a number.</summary>
    None,

    /// <summary>Digits with an optional sign.</summary>
    Integer,

    /// <summary>With a decimal point, an exponent or both.</summary>
    Real,

    /// <summary>With a decimal comma.</summary>
    RealWithComma,
}
