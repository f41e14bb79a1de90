namespace SensorProfile.Drift.OverTheYears;

/// <summary>Names of the compared quantities in a sentence.</summary>
internal static class QuantityWords
{
    /// <summary>"darkRate" becomes "the dark current"; an unknown name stays as it is.</summary>
    /// <param name="quantity">Name as in profile.json.</param>
    public static string WithArticle(string quantity) =>
        quantity switch
        {
            QuantityNames.DarkRate => "the dark current",
            QuantityNames.DarkRateByPixel => "the dark current (compared pixel by pixel)",
            QuantityNames.BiasLevel => "the bias level",
            QuantityNames.ReadNoise => "the read noise",
            QuantityNames.Gain => "the gain",
            QuantityNames.FullWell => "the full well",
            QuantityNames.SaturationLevel => "the saturation level",
            QuantityNames.LinearityError => "the linearity",
            QuantityNames.ResponseNonuniformity => "the response nonuniformity",
            QuantityNames.DoublingTemperature => "the doubling temperature",
            QuantityNames.GlowTotal => "the glow",
            QuantityNames.RowNoise => "the row noise",
            QuantityNames.ColumnNoise => "the column noise",
            QuantityNames.NewLessHealed => "the number of hot pixels",
            QuantityNames.GrowingPatch => "a patch of new hot pixels",
            _ when QuantityNames.IsHotPixelCount(quantity) =>
                $"the number of pixels above {QuantityNames.HotPixelRate(quantity)} e⁻/px/s",
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
