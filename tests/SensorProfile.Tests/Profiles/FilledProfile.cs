using System.Collections;
using System.Reflection;
using SensorProfile.Profiles;

namespace SensorProfile.Tests.Profiles;

/// <summary>A profile in which every field holds something, also those that will be added later.</summary>
internal static class FilledProfile
{
    public static CameraProfile Build()
    {
        int count = 0;
        var profile = (CameraProfile)Fill(typeof(CameraProfile), ref count);
        return profile with { SchemaVersion = CameraProfile.CurrentSchemaVersion };
    }

    private static object Fill(Type type, ref int count)
    {
        count++;
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string))
            return $"Täxt {count}";
        if (type == typeof(double))
            return count / 7.0; // needs all its digits
        if (type == typeof(int))
            return count;
        if (type == typeof(long))
            return count + 5_000_000_000L;
        if (type == typeof(bool))
            return true;
        if (type.IsEnum)
            return Enum.GetValues(type).Cast<object>().Last(); // not the one that stands where nothing is said
        if (type == typeof(DateTimeOffset))
            return new DateTimeOffset(2025, 10, 12, 20, 15, 0, TimeSpan.Zero).AddSeconds(count);
        return type.IsGenericType ? FillList(type.GetGenericArguments()[0], ref count) : FillRecord(type, ref count);
    }

    private static IList FillList(Type element, ref int count)
    {
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(element))!;
        list.Add(Fill(element, ref count));
        list.Add(Fill(element, ref count));
        return list;
    }

    private static object FillRecord(Type type, ref int count)
    {
        ConstructorInfo constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        var arguments = new List<object>();
        foreach (ParameterInfo parameter in constructor.GetParameters())
            arguments.Add(Fill(parameter.ParameterType, ref count));
        object record = constructor.Invoke([.. arguments]);
        if (arguments.Count > 0)
            return record;
        foreach (PropertyInfo property in ProfileProperties.Find(type))
            property.SetValue(record, Fill(property.PropertyType, ref count));
        return record;
    }
}
