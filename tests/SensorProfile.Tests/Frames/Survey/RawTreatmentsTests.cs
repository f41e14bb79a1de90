using SensorProfile.Frames.Survey;
using SensorProfile.Raw;

namespace SensorProfile.Tests.Frames.Survey;

public sealed class RawTreatmentsTests
{
    [Fact]
    public void AFrameWithADarkOfTheCameraSubtractedIsRefused()
    {
        RawTreatment treatment = RawTreatments.Refusing(With(RawTreatmentKind.DarkSubtracted))!;
        Assert.Equal(
            "The camera has already subtracted a dark of its own from it (Long Exposure Noise Reduction: On). Switch off "
                + "long-exposure noise reduction in the camera and take them again.",
            RawTreatments.Reason(treatment)
        );
    }

    [Theory]
    [InlineData(RawTreatmentKind.NoiseReduced, "noise was reduced before they were stored")]
    [InlineData(RawTreatmentKind.LossyCompression, "compressed with loss")]
    [InlineData(RawTreatmentKind.SeveralExposures, "each is made of several exposures")]
    public void SoIsEveryOtherTreatmentThatChangesTheNoise(RawTreatmentKind kind, string cause)
    {
        Assert.NotNull(RawTreatments.Refusing(With(kind)));
        var finding = Assert.Single(RawTreatments.Findings([("a.dng", kind), ("b.dng", kind)]));
        Assert.Equal(FindingCodes.TreatedInCamera, finding.Code);
        Assert.StartsWith("2 files left out because", finding.Message, StringComparison.Ordinal);
        Assert.Contains(cause, finding.Message, StringComparison.Ordinal);
        Assert.Equal(["a.dng", "b.dng"], finding.Frames);
    }

    [Fact]
    public void CodesAlongACurveAreNoReason() =>
        Assert.Null(RawTreatments.Refusing(With(RawTreatmentKind.CurvedCodes)));

    private static RawFacts With(RawTreatmentKind kind) =>
        new() { Treatments = [new RawTreatment(kind, "Long Exposure Noise Reduction: On")] };
}
