namespace SensorProfile.Reporting.Content.Years;

/// <summary>A published pace of ageing.</summary>
/// <param name="Label">Instrument and years, short.</param>
/// <param name="Low">Growth, % per year: the smallest that the source gives.</param>
/// <param name="High">The largest.</param>
/// <param name="Source">Where the numbers were read.</param>
internal sealed record PublishedPace(string Label, double Low, double High, string Source);
