using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using SensorProfile.Profiles.Darks;
using SensorProfile.Profiles.Pattern;
using SensorProfile.Profiles.Response;
using SensorProfile.Profiles.Session;

namespace SensorProfile.Profiles.Files;

/// <summary>Fills in the fields that a document lacks with the values that a new record has.</summary>
/// <remarks>
/// The JSON source generator sets every init-only property, absent ones to null or 0, and so loses the defaults that
/// the records state (an absent list would be null). A document of an earlier version is therefore completed before it
/// is read. A quantity without its value or uncertainty is not completed: it stays an error.
/// </remarks>
internal static class ProfileDefaults
{
    private static readonly Dictionary<Type, JsonObject> _defaults = new()
    {
        [typeof(CameraProfile)] = Of(new CameraProfile()),
        [typeof(SoftwareInfo)] = Of(new SoftwareInfo("", "")),
        [typeof(CameraInfo)] = Of(new CameraInfo()),
        [typeof(ModeProfile)] = Of(new ModeProfile()),
        [typeof(ModeSettings)] = Of(new ModeSettings()),
        [typeof(ChannelProfile)] = Of(new ChannelProfile()),
        [typeof(DarkCurrentProfile)] = Of(new DarkCurrentProfile()),
        [typeof(DarkCurrentPoint)] = Of(new DarkCurrentPoint()),
        [typeof(DarkNight)] = Of(new DarkNight()),
        [typeof(DarkLevel)] = Of(new DarkLevel()),
        [typeof(DarkCurrentModel)] = Of(new DarkCurrentModel()),
        [typeof(FixedPatternProfile)] = Of(new FixedPatternProfile()),
        [typeof(HotPixelsAdu)] = Of(new HotPixelsAdu()),
        [typeof(DefectCounts)] = Of(new DefectCounts()),
        [typeof(DefectThresholds)] = Of(new DefectThresholds()),
        [typeof(GlowRegion)] = Of(new GlowRegion()),
        [typeof(PhotonTransferProfile)] = Of(new PhotonTransferProfile()),
        [typeof(PhotonTransferCurve)] = Of(new PhotonTransferCurve()),
        [typeof(PhotonTransferPoint)] = Of(new PhotonTransferPoint()),
        [typeof(NoiseDistribution)] = Of(new NoiseDistribution()),
        [typeof(FramesInfo)] = Of(new FramesInfo()),
        [typeof(RejectedFile)] = Of(new RejectedFile("", "")),
        [typeof(FrameSummary)] = Of(new FrameSummary("", "", null, null, null, null, null)),
        [typeof(Finding)] = Without(Of(new Finding("", Severity.Note, "")), "message"),
        [typeof(Measurement)] = Without(Of(new Measurement(0, 0, "", 0, "")), "value", "standardUncertainty"),
        [typeof(ModelParameter)] = Without(
            Of(new ModelParameter("", 0, 0, "", 0, "")),
            "name",
            "value",
            "standardUncertainty"
        ),
        [typeof(HotPixelCount)] = [],
        [typeof(RateQuantile)] = [],
        [typeof(DoublingByRate)] = [],
        [typeof(FlickerClass)] = [],
        [typeof(FlickerReach)] = [],
        [typeof(HotPixelTemperature)] = Of(new HotPixelTemperature()),
        [typeof(DarkPredictionProfile)] = Of(new DarkPredictionProfile()),
        [typeof(PredictionClass)] = Of(new PredictionClass()),
        [typeof(PredictionTest)] = Of(new PredictionTest()),
        [typeof(LeftOutSet)] = Of(new LeftOutSet()),
        [typeof(PredictionFigures)] = [],
        [typeof(PatternStructure)] = Of(new PatternStructure()),
        [typeof(PatternPeriod)] = [],
        [typeof(LineProfile)] = Of(new LineProfile()),
        [typeof(DefectPlaces)] = Of(new DefectPlaces()),
        [typeof(DefectArea)] = [],
        [typeof(DefectCluster)] = [],
        [typeof(GlowSignal)] = [],
        [typeof(GlowRate)] = [],
        [typeof(GlowClass)] = [],
        [typeof(HotLawBend)] = [],
        [typeof(HotPixelCurveAt)] = [],
        [typeof(DefectLine)] = [],
        [typeof(SensorBoundary)] = [],
        [typeof(BlackLevelProfile)] = Of(new BlackLevelProfile()),
        [typeof(BlackLevelJump)] = [],
        [typeof(MaskedBorderProfile)] = Of(new MaskedBorderProfile()),
        [typeof(MaskedBorderSet)] = Of(new MaskedBorderSet()),
        [typeof(MaskedBorderFrame)] = [],
        [typeof(BlackLevelPoint)] = [],
        [typeof(DarkCurrentLimit)] = Of(new DarkCurrentLimit()),
    };

    /// <summary>Adds what is missing, in place.</summary>
    /// <param name="document">A profile of this or an earlier version.</param>
    /// <exception cref="JsonException">A list holds a null where a record is meant.</exception>
    public static void Fill(JsonObject document) => Fill<CameraProfile>(document);

    /// <summary>The same for a record that stands alone.</summary>
    public static void Fill<T>(JsonObject record) => Fill(record, typeof(T));

    /// <summary>The record types known here; a test compares them with those that exist.</summary>
    internal static IReadOnlyCollection<Type> Types => _defaults.Keys;

    private static void Fill(JsonObject fields, Type type)
    {
        foreach ((string name, JsonNode? value) in _defaults[type])
        {
            if (!fields.ContainsKey(name))
                fields[name] = value?.DeepClone();
        }
        foreach (JsonPropertyInfo property in ProfileJson.Instance.Options.GetTypeInfo(type).Properties)
        {
            if (fields[property.Name] is { } child)
                FillChild(child, property.PropertyType);
        }
    }

    private static void FillChild(JsonNode child, Type type)
    {
        if (child is JsonObject fields && _defaults.ContainsKey(type))
            Fill(fields, type);
        if (
            child is not JsonArray items
            || ProfileJson.Instance.Options.GetTypeInfo(type).ElementType is not { } element
            || element.IsValueType
        )
            return;
        for (int i = 0; i < items.Count; i++)
            FillChild(
                items[i]
                    ?? throw new JsonException(
                        "A list has an empty entry (null).",
                        $"{items.GetPath()}[{i}]",
                        null,
                        null
                    ),
                element
            );
    }

    private static JsonObject Of<T>(T record) =>
        (JsonObject)JsonSerializer.SerializeToNode(record, ProfileJson.Instance.Options.GetTypeInfo(typeof(T)))!;

    private static JsonObject Without(JsonObject fields, params ReadOnlySpan<string> names)
    {
        foreach (string name in names)
            fields.Remove(name);
        return fields;
    }
}
