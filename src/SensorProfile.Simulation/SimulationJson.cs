using System.Text.Json;
using System.Text.Json.Serialization;

namespace SensorProfile.Simulation;

/// <summary>
/// JSON of this project, by source generation: camelCase; comments and trailing commas are allowed in files written by
/// hand.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    ReadCommentHandling = JsonCommentHandling.Skip,
    AllowTrailingCommas = true,
    WriteIndented = true,
    RespectNullableAnnotations = true
)]
[JsonSerializable(typeof(CameraDescription))]
[JsonSerializable(typeof(JsonElement))]
[JsonSerializable(typeof(Truth.SimulationTruth))]
internal sealed partial class SimulationJson : JsonSerializerContext;
