using System.Text.Json;

namespace SensorProfile;

/// <summary>Turns enumeration values into words, for scripts and for people.</summary>
internal static class EnumWord
{
    /// <summary>"does-not-fit".</summary>
    public static string Of(Enum value) => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>"does not fit".</summary>
    public static string Spaced(Enum value) => Of(value).Replace('-', ' ');
}
