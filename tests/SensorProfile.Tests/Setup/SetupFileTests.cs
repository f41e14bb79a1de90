using System.Text;
using System.Text.Json;
using SensorProfile.NoiseModel;
using SensorProfile.Setup;

namespace SensorProfile.Tests.Setup;

/// <summary><c>setup.json</c>: written by the program or by hand, and refused by place where it makes no sense.</summary>
public sealed class SetupFileTests
{
    private static readonly ObservingSetup Whole = new()
    {
        Telescope = new TelescopeSetup { FocalRatio = 5, Efficiency = 0.4 },
        Camera = new CameraSetup { Profile = "tarn-9m", PixelMicrometres = 3.76 },
        Sky = new SkySetup { Brightness = 20.5 },
        Filters =
        [
            new FilterSetup
            {
                Name = "Ha",
                BandwidthNanometres = 7,
                CentreNanometres = 656,
            },
        ],
        Stack = new StackSetup
        {
            Exposure = 300,
            Lights = 40,
            DitherPositions = 20,
            Rejection = Rejection.SigmaClip,
        },
        Cooling = new CoolingSetup { Reach = 35, Nights = "nights.csv" },
        AcceptedLoss = 5,
    };

    [Fact]
    public void WhatIsWrittenIsReadAgain()
    {
        string text = Encoding.UTF8.GetString(SetupFile.ToUtf8(Whole));
        ObservingSetup read = Parse(text);
        Assert.Equal(text, Encoding.UTF8.GetString(SetupFile.ToUtf8(read)));
        Assert.Equal(Whole.Stack, read.Stack);
        Assert.Equal(Whole.Filters, read.Filters);
    }

    [Fact]
    public void RelativePathsCountFromTheFile()
    {
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            string file = Path.Combine(folder, "setup.json");
            SetupFile.Write(file, Whole);
            ObservingSetup read = SetupFile.Read(file);
            Assert.Equal(Path.Combine(folder, "tarn-9m"), read.Camera!.Profile);
            Assert.Equal(Path.Combine(folder, "nights.csv"), read.Cooling!.Nights);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData(
        """{ "stack": { "light": 40 } }""",
        "s.json, line 1, stack.light: there is no such field; the fields here are exposure, lights, ditherPositions, "
            + "rejection, smooth."
    )]
    [InlineData(
        """{ "telescop": {} }""",
        "s.json, line 1, telescop: there is no such field; "
            + "the fields here are telescope, camera, sky, filters, stack, cooling, acceptedLoss."
    )]
    [InlineData(
        """{ "stack": { "lights": 10, "ditherPositions": 30 } }""",
        "s.json, line 1, stack: 10 lights cannot have 30 dither positions: give at most one per light."
    )]
    [InlineData("""{ "stack": { "lights": "many" } }""", "s.json, line 1, stack.lights: expected a whole number.")]
    [InlineData(
        """{ "stack": { "lights": 4, "lights": 5 } }""",
        "s.json, line 1, stack.lights: this name is given twice; keep the one that is meant."
    )]
    [InlineData(
        """{ "stack": { "rejection": "always" } }""",
        "s.json, line 1, stack.rejection: expected none, sigma-clip, winsorised, median."
    )]
    [InlineData(
        "{\n \"stack\": {\n  \"exposure\": -3 } }",
        "s.json, line 3, stack.exposure: must be a number above 0 and at most 100000, not -3."
    )]
    [InlineData(
        """{ "sky": { "rate": 1, "brightness": 20 } }""",
        "s.json, line 1, sky: give the sky in one way only: brightness, rate or lights."
    )]
    [InlineData(
        """{ "cooling": { "uncooled": true, "reach": 30 } }""",
        "s.json, line 1, cooling: a camera without a cooler has no reach: leave out reach or uncooled."
    )]
    [InlineData(
        """{ "filters": [ { "bandwidthNanometres": 7 } ] }""",
        "s.json, line 1, filters[0]: a filter needs a name."
    )]
    [InlineData("""{ "filters": [ null ] }""", "s.json, line 1, filters[0]: a filter needs a name.")]
    [InlineData(
        """{ "filters": [ { "name": "L" }, { "name": "l" } ] }""",
        "s.json, line 1, filters: two filters are called 'L'."
    )]
    [InlineData(
        "{ \"camera\": {\n \"profile\": \"a\\u0000b\" } }",
        "s.json, line 2, camera.profile: expected the path of a file or folder."
    )]
    [InlineData(
        """{ "stack": { "exposure": 1e999 } }""",
        "s.json, line 1, stack.exposure: the number is too large to be one; at most 1.8e308 can be read."
    )]
    [InlineData("null", """s.json: expected a setup such as { "stack": { "exposure": 300, "lights": 40 } }.""")]
    public void WhatMakesNoSenseIsNamedByItsPlace(string json, string message) =>
        Assert.Equal(message, Assert.Throws<SetupFormatException>(() => Parse(json)).Message);

    [Fact]
    public void CommentsAndTrailingCommasAreUnderstood() =>
        Assert.Equal(40, Parse("// mine\n{ \"stack\": { \"lights\": 40, }, }").Stack!.Lights);

    /// <summary>Bytes of a whole setup, changed at random: read, or refused as a setup; nothing else.</summary>
    [Fact]
    public void MutatedBytesAreReadOrRefused()
    {
        byte[] whole = SetupFile.ToUtf8(Whole);
        Random random = new(20);
        int refused = 0;
        for (int i = 0; i < 3000; i++)
        {
            byte[] bytes = [.. whole];
            for (int k = random.Next(1, 4); k > 0; k--)
                bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
            try
            {
                SetupFile.Parse(bytes.AsSpan(0, random.Next(bytes.Length / 2, bytes.Length + 1)), "s.json");
            }
            catch (SetupFormatException)
            {
                refused++;
            }
        }
        Assert.InRange(refused, 2000, 3000);
    }

    [Fact]
    public void TheSchemaNamesEveryField()
    {
        using JsonDocument schema = JsonDocument.Parse(SetupFile.Schema());
        JsonElement fields = schema.RootElement.GetProperty("properties");
        Assert.Equal(
            ["telescope", "camera", "sky", "filters", "stack", "cooling", "acceptedLoss"],
            fields.EnumerateObject().Select(p => p.Name)
        );
        Assert.True(fields.GetProperty("stack").GetProperty("properties").TryGetProperty("ditherPositions", out _));
    }

    private static ObservingSetup Parse(string json) => SetupFile.Parse(Encoding.UTF8.GetBytes(json), "s.json");
}
