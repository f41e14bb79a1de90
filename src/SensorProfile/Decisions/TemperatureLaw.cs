using SensorProfile.Profiles;

namespace SensorProfile.Decisions;

/// <summary>Dark current against temperature, as the decisions need it.</summary>
internal sealed class TemperatureLaw(double reference, double rate, double doubling, double floor)
{
    internal double RateAt(double celsius) => floor + rate * Math.Pow(2, (celsius - reference) / doubling);

    internal double DoublingAt(double celsius)
    {
        double total = RateAt(celsius);
        return doubling * total / (total - floor);
    }

    internal static TemperatureLaw? FromModel(DarkCurrentModel model, double referenceCelsius)
    {
        double? Find(string name) => model.Parameters.FirstOrDefault(p => p.Name == name)?.Value;
        return Find("rateAtReference") is double r && Find("doublingTemperature") is double d && r > 0 && d > 0
            ? new TemperatureLaw(referenceCelsius, r, d, Find("floor") ?? 0) : null;
    }
}
