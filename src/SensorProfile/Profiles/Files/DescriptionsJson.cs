using System.Text.Json.Serialization;

namespace SensorProfile.Profiles.Files;

/// <summary>Reads the table of descriptions that the schema prints.</summary>
[JsonSerializable(typeof(Dictionary<string, string>))]
internal sealed partial class DescriptionsJson : JsonSerializerContext;
