namespace SensorProfile.Tests.HouseRules;

/// <summary>
/// Files that may hold lines of more than 140 columns, and how many: a table, a pattern, a message in one piece.
/// </summary>
/// <remarks>Only ever shorten this list.</remarks>
internal static class WideLines
{
    public static readonly IReadOnlyDictionary<string, int> Allowed = new Dictionary<string, int>
    {
        ["src/SensorProfile/Characterisation/BiasRecipe.cs"] = 3,
        ["src/SensorProfile/Characterisation/DarkFindings.cs"] = 4,
        ["src/SensorProfile/Characterisation/FlatFindings.cs"] = 3,
        ["src/SensorProfile/Characterisation/HotPixelTemperatures.cs"] = 1,
        ["src/SensorProfile/Characterisation/Maps/DefectTable.cs"] = 3,
        ["src/SensorProfile/Characterisation/StructureRecipe.cs"] = 2,
        ["src/SensorProfile/Decisions/Exposure/ExposureAdvice.cs"] = 1,
        ["src/SensorProfile/Decisions/Exposure/SubExposure.cs"] = 1,
        ["src/SensorProfile/Frames/Headers/StartTime.cs"] = 1,
        ["tests/SensorProfile.Tests/Decisions/ComputedDarks/ComputedDarkTests.cs"] = 1,
        ["tests/SensorProfile.Tests/Decisions/OutsideValuesTests.cs"] = 3,
        ["tests/SensorProfile.Tests/Drift/MappedPowerTests.cs"] = 1,
    };
}
