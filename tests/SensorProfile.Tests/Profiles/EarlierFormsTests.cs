using System.IO.Compression;
using System.Text.Json;
using SensorProfile.Decisions.Setpoint;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Sky;
using SensorProfile.Profiles;
using SensorProfile.Profiles.Files;
using SensorProfile.Tests.HouseRules;

namespace SensorProfile.Tests.Profiles;

/// <summary>
/// Profiles as earlier versions wrote them are read for ever. The fixtures are example reports of the past, as they were
/// committed. Never rewrite them; add one for a new form.
/// </summary>
public sealed class EarlierFormsTests
{
    private static readonly string _folder = Path.Combine(
        SourceTree.Root,
        "tests",
        "SensorProfile.Tests",
        "Profiles",
        "Fixtures"
    );

    private static readonly string[] _names =
    [
        .. Directory.EnumerateFiles(_folder, "*.json.gz").Select(file => Path.GetFileName(file)).Order(),
    ];

    public static TheoryData<string> Fixtures => [.. _names];

    [Fact]
    public void EveryVersionOfTheSchemaHasOne() =>
        Assert.All(Enumerable.Range(1, CameraProfile.CurrentSchemaVersion), version =>
            Assert.Contains(_names, name => name.StartsWith($"schema-{version}-", StringComparison.Ordinal))
        );

    [Theory, MemberData(nameof(Fixtures))]
    public void ItsNumbersAreReadAndAQuestionIsAnswered(string name)
    {
        string path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid():N}.json");
        try
        {
            using (GZipStream packed = new(File.OpenRead(Path.Combine(_folder, name)), CompressionMode.Decompress))
            using (FileStream plain = File.Create(path))
                packed.CopyTo(plain);
            using JsonDocument written = JsonDocument.Parse(File.ReadAllText(path));
            JsonElement mode = written.RootElement.GetProperty("modes")[0];
            CameraProfile profile = ProfileFile.Read(path);

            ModeProfile read = profile.Modes[0];
            Assert.Equal(
                Of(mode.GetProperty("readNoise")),
                (read.ReadNoise!.Value, read.ReadNoise.StandardUncertainty)
            );
            Assert.Equal(Of(mode.GetProperty("gain")), (read.Gain!.Value, read.Gain.StandardUncertainty));
            Measurement doubling = read.DarkCurrent!.DoublingTemperature!;
            Assert.Equal(
                Of(mode.GetProperty("darkCurrent").GetProperty("doublingTemperature")),
                (doubling.Value, doubling.StandardUncertainty)
            );
            Assert.Equal(
                mode.GetProperty("fixedPattern").GetProperty("hotPixelCurve").GetArrayLength(),
                read.FixedPattern!.HotPixelCurve.Count
            );

            SetpointAnswer answer = SetpointAdvice.Find(
                profile,
                ModeChoice.Find(profile, null),
                new SetpointQuestion { ExposureSeconds = 300, Sky = SkyRate.Given(0.5) }
            );
            // all of them are of one camera, whose 99 % set point is near −6 °C
            Assert.InRange(answer.Quantities["setpoint99"]!.Value, -10, -2);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static (double, double) Of(JsonElement quantity) =>
        (quantity.GetProperty("value").GetDouble(), quantity.GetProperty("standardUncertainty").GetDouble());
}
