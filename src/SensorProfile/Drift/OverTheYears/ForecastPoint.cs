namespace SensorProfile.Drift.OverTheYears;

/// <summary>A trend at one date.</summary>
/// <param name="DateUtc">The date.</param>
/// <param name="Value">Value of the line there.</param>
/// <param name="Low">Lower end of its 95 % band.</param>
/// <param name="High">Upper end of its 95 % band.</param>
/// <param name="Beyond">Whether the date lies after the last measurement.</param>
internal sealed record ForecastPoint(DateTimeOffset DateUtc, double Value, double Low, double High, bool Beyond);
