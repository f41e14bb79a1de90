namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// Files that may hold lines of more than 140 columns, and how many: a table, a pattern, a message in one piece.
/// </summary>
/// <remarks>Only ever shorten this list.</remarks>
internal static class WideLines
{
    public static readonly IReadOnlyDictionary<string, int> Allowed = new Dictionary<string, int>
    {
        ["src/SensorProfile.Desk/Pages/Bring.razor"] = 1,
        ["src/SensorProfile.Desk/Pages/Library.razor"] = 1,
        ["src/SensorProfile.Desk/Pages/Measure.razor"] = 1,
        ["src/SensorProfile.Desk/Pages/SensorPicture.razor"] = 1,
        ["src/SensorProfile/Characterisation/HotPixelTemperatures.cs"] = 1,
        ["tests/SensorProfile.Tests/Decisions/ComputedDarks/ComputedDarkTests.cs"] = 1,
    };
}
