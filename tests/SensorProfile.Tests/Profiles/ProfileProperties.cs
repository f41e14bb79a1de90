using System.Reflection;
using System.Text.Json.Serialization;

namespace SensorProfile.Tests.Profiles;

/// <summary>What profile.json holds of a record: its public properties, and internal ones that are marked for it.</summary>
internal static class ProfileProperties
{
    public static IEnumerable<PropertyInfo> Find(Type record) =>
        record
            .GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
            .Where(p => p.GetMethod!.IsPublic || p.IsDefined(typeof(JsonIncludeAttribute)));
}
