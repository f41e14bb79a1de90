namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>Quantities in the cells of tables whose heading names the unit.</summary>
internal static class TableCell
{
    /// <summary>"1.5234 ± 0.0041", or a dash where nothing was measured.</summary>
    public static string Of(Measurement? quantity) =>
        quantity is null ? "–" : QuantityText.Number(quantity.Value, quantity.StandardUncertainty);
}
