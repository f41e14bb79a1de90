namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>Findings, the most serious first.</summary>
/// <param name="Findings">The findings.</param>
internal sealed record FindingsBlock(IReadOnlyList<Finding> Findings) : Block;
