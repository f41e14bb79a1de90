namespace SensorProfile.Drift.OverTheYears;

/// <summary>Names of the compared quantities in a sentence.</summary>
internal static class QuantityNames
{
    /// <summary>"darkRate" becomes "the dark current"; an unknown name stays as it is.</summary>
    /// <param name="quantity">Name as in profile.json.</param>
    public static string WithArticle(string quantity) =>
        quantity switch
        {
            "darkRate" => "the dark current",
            "darkRateByPixel" => "the dark current (compared pixel by pixel)",
            "biasLevel" => "the bias level",
            "readNoise" => "the read noise",
            "gain" => "the gain",
            "fullWell" => "the full well",
            "saturationLevel" => "the saturation level",
            "linearityError" => "the linearity",
            "responseNonuniformity" => "the response nonuniformity",
            "doublingTemperature" => "the doubling temperature",
            "glowTotal" => "the glow",
            "rowNoise" => "the row noise",
            "columnNoise" => "the column noise",
            "newLessHealed" => "the number of hot pixels",
            "growingPatch" => "a patch of new hot pixels",
            _ when quantity.StartsWith("hotPixelsAbove", StringComparison.Ordinal) =>
                $"the number of pixels above {quantity["hotPixelsAbove".Length..]} e⁻/px/s",
            _ when quantity.IndexOf("Of", StringComparison.Ordinal) is > 0 and var at =>
                $"{WithArticle(quantity[..at])} of the {quantity[(at + 2)..]} pixels",
            _ => quantity,
        };

    /// <summary>"darkRate" becomes "Dark current".</summary>
    /// <param name="quantity">Name as in profile.json.</param>
    public static string Heading(string quantity)
    {
        string name = WithArticle(quantity);
        foreach (string article in (string[])["the ", "a "])
            if (name.StartsWith(article, StringComparison.Ordinal))
                name = name[article.Length..];
        return char.ToUpperInvariant(name[0]) + name[1..];
    }
}
