using SensorProfile.Raw;

namespace SensorProfile.Frames.Survey;

/// <summary>Processing by cameras and converters that makes stored samples useless for measurement.</summary>
internal static class RawTreatments
{
    /// <summary>The processing for which a frame must be left out; null when there is none.</summary>
    /// <remarks>Codes along a curve can be inverted: see <see cref="FindingCodes.CurvedCodes"/>.</remarks>
    public static RawTreatment? Refusing(RawFacts facts) =>
        facts.Treatments.FirstOrDefault(t => t.Kind != RawTreatmentKind.CurvedCodes);

    /// <summary>Why one file was left out.</summary>
    public static string Reason(RawTreatment treatment) =>
        treatment.Kind switch
        {
            RawTreatmentKind.DarkSubtracted => "The camera has already subtracted a dark of its own from it",
            RawTreatmentKind.NoiseReduced => "Its noise was reduced before it was stored",
            RawTreatmentKind.LossyCompression => "It was compressed with loss, which changes its noise",
            _ => "It is made of several exposures",
        } + $" ({treatment.Evidence}). {Remedy(treatment.Kind)}";

    /// <summary>One finding per kind of processing.</summary>
    public static IEnumerable<Finding> Findings(IEnumerable<(string Name, RawTreatmentKind Kind)> leftOut) =>
        leftOut
            .GroupBy(file => file.Kind)
            .OrderBy(group => group.Key)
            .Select(group => new Finding(
                FindingCodes.TreatedInCamera,
                Severity.Warning,
                $"{Counted.Files(group.Count())} left out because {Cause(group.Key)}. {Remedy(group.Key)}",
                [.. group.Select(file => file.Name)]
            ));

    private static string Cause(RawTreatmentKind kind) =>
        kind switch
        {
            RawTreatmentKind.DarkSubtracted =>
                "the camera has subtracted a dark of its own: dark current and hot pixels are gone from them, and "
                    + "their noise is that of two frames",
            RawTreatmentKind.NoiseReduced => "noise was reduced before they were stored",
            RawTreatmentKind.LossyCompression => "they were compressed with loss, which changes their noise",
            _ => "each is made of several exposures",
        };

    private static string Remedy(RawTreatmentKind kind) =>
        kind switch
        {
            RawTreatmentKind.DarkSubtracted =>
                "Switch off long-exposure noise reduction in the camera and take them again.",
            RawTreatmentKind.NoiseReduced => "Give the files as the camera wrote them.",
            RawTreatmentKind.LossyCompression =>
                "Set the camera, or the converter, to lossless raw files and take them again.",
            _ => "Switch off pixel shift and multiple exposures in the camera and take them again.",
        };
}
