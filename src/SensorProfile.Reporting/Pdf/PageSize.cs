namespace SensorProfile.Reporting.Pdf;

/// <summary>The paper of a document, in points.</summary>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Margin">Blank margin on all sides.</param>
internal sealed record PageSize(double Width, double Height, double Margin)
{
    /// <summary>A4 portrait (ISO 216: 210 × 297 mm).</summary>
    public static PageSize A4 { get; } = new(595.28, 841.89, 48);

    /// <summary>A6 portrait (ISO 216: 105 × 148 mm): as wide as a phone can show text of this size.</summary>
    public static PageSize A6 { get; } = new(297.64, 419.53, 24);
}
