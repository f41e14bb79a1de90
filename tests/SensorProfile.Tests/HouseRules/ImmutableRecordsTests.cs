using System.Reflection;
using System.Runtime.CompilerServices;

namespace SensorProfile.Tests.HouseRules;

/// <summary>Records are immutable: every settable property is init-only.</summary>
public sealed class ImmutableRecordsTests
{
    [Fact]
    public void NoRecordCanBeChangedAfterItIsMade()
    {
        var settable = typeof(Measurement)
            .Assembly.GetTypes()
            .Where(IsRecord)
            .SelectMany(t =>
                t.GetProperties(
                    BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.DeclaredOnly
                )
            )
            .Where(p =>
                p.SetMethod is { } set
                && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
            )
            .Select(p => $"{p.DeclaringType!.Name}.{p.Name}");
        Assert.Empty(settable);
    }

    private static bool IsRecord(Type type) =>
        type.GetMethod("<Clone>$", BindingFlags.Public | BindingFlags.Instance) is not null;
}
