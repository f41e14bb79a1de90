using System.Globalization;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Tests.Parameters;

public class CameraDescriptionTests
{
    [Fact]
    public void WhatIsLeftOutKeepsItsDefault()
    {
        CameraDescription read = CameraDescription.Parse(
            """
            { "width": 4, "height": 3, "glow": [{ "rate": 1 }], "hotPixels": { "share": 0.1 },
              "darkCurrent": { "doublingTemperature": 6 }, "shots": [{ "kind": "bias" }] }
            """
        );
        CameraDescription expected = new()
        {
            Width = 4,
            Height = 3,
            Glow = [new Glow { Rate = 1 }],
            HotPixels = new HotPixels { Share = 0.1 },
            DarkCurrent = new DarkCurrentParameters { DoublingTemperature = 6 },
            Shots = [new Shot { Kind = FrameKind.Bias }],
        };
        Assert.Equal(expected.ToJson(), read.ToJson());
        Assert.Equal(-10, read.DarkCurrent!.ReferenceTemperature);
        Assert.Equal(50, read.Glow[0].Width);
        Assert.Equal(1, read.Shots[0].Count);
    }

    [Fact]
    public void WrittenAndReadBackItIsTheSame()
    {
        foreach (
            CameraDescription camera in (CameraDescription[])
                [DemoCameras.Tarn9M(), DemoCameras.Tarn9M(3), DemoCameras.Fell24C()]
        )
        {
            Assert.Equal(camera.ToJson(), CameraDescription.Parse(camera.ToJson()).ToJson());
        }
    }

    [Fact]
    public void CommentsAndTrailingCommasAreAllowed() =>
        Assert.Equal(4, CameraDescription.Parse("{ \"width\": 4, /* px */ \"height\": 3, // rows\n}").Width);

    [Fact]
    public void NumbersAreReadTheSameUnderEveryCulture()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            CameraDescription camera = CameraDescription.Parse(
                """{ "width": 4, "height": 3, "gain": 0.5, "shots": [{ "kind": "dark", "exposure": 1.5 }] }"""
            );
            Assert.Equal(0.5, camera.Gain);
            Assert.Equal("dark_-10C_1.5s_001.fits", new SimulatedNight(camera, 1).Frames[0].FileName);
            var error = Assert.Throws<CameraDescriptionException>(() =>
                CameraDescription.Parse("""{ "width": 4, "height": 3, "vignetting": 1.5 }""")
            );
            Assert.Equal(
                "camera description, $.vignetting: found 1.5, which is not within 0…1. Correct the value there.",
                error.Message
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(
        """{ "width": 4, "height": 3, "readnoise": 2 }""",
        "a.json, $.readnoise: there is no such field. Did you mean readNoise?"
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "hotPixels": { "part": 2 } }""",
        "a.json, $.hotPixels.part: there is no such field. Known here: share, distribution, activation, activationSpread."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "glow": [{}, { "peakrate": 2 }] }""",
        "a.json, $.glow[1].peakrate: there is no such field. Known here: shape, rate, width, x, y, "
            + "length, doublingTemperature, exposureExponent, referenceExposure, activationEnergy, warmUp, warmUpTime."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "gain": -1 }""",
        "a.json, $.gain: found -1, which is not within 0.0001…10000. Correct the value there."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "bits": 16, "codeStep": 4 }""",
        "a.json, $.codeStep: 16 bits with a step of 4 exceed the 65535 of a 16-bit file. Lower one of them."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "colourFilter": "RGB" }""",
        "a.json, $.colourFilter: found 'RGB'. Use RGGB, BGGR, GRBG or GBRG, or leave it out for monochrome."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "darkCurrent": { "rateAtReference": 1 } }""",
        "a.json, $.darkCurrent: 0 temperature laws are given. Give exactly one of doublingTemperature, activationEnergy and diffusionShare."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "darkCurrent": { "doublingTemperature": 6, "activationEnergy": 0.6 } }""",
        "a.json, $.darkCurrent: 2 temperature laws are given. Give exactly one of doublingTemperature, activationEnergy and diffusionShare."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "shots": [{ "kind": "bias" }, { "kind": "dark", "exposure": -1 }] }""",
        "a.json, $.shots[1].exposure: found -1, which is not within 0…100000. Correct the value there."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "shots": [{ "kind": "dark", "level": 5 }] }""",
        "a.json, $.shots[0].level: only flats and lights collect light. Remove it, or use lightLeak for stray light."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "shots": [{ "kind": "unknown" }] }""",
        "a.json, $.shots[0].kind: found 'unknown'. Use bias, dark, flat, dark-flat or light."
    )]
    [InlineData(
        """{ "width": 40000, "height": 30000 }""",
        "a.json, $.height: 40000 × 30000 pixels are more than 500000000. Simulate a window of the sensor."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "coldPixels": { "relativeRate": 1.5 } }""",
        "a.json, $.coldPixels.relativeRate: found 1.5, which is not within 0…1. Correct the value there."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "coldPixels": { "rate": 0.1 } }""",
        "a.json, $.coldPixels.rate: there is no such field. Known here: share, relativeRate."
    )]
    [InlineData(
        """{ "width": 40, "height": 30, "hotClusters": { "count": 9, "size": 6 } }""",
        "a.json, $.hotClusters.count: 9 clusters of 6 pixels would touch each other on 40 × 30 pixels. Use fewer or smaller ones."
    )]
    [InlineData(
        """{ "width": 40, "height": 30, "hotClusters": { "count": 1, "size": 0 } }""",
        "a.json, $.hotClusters.size: found 0, which is not within 1…10000. Correct the value there."
    )]
    [InlineData(
        """{ "width": 40, "height": 30, "badRows": { "count": 31 } }""",
        "a.json, $.badRows.count: found 31, which is not within 0…30. Correct the value there."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "width": 5 }""",
        "a.json, $.width: this name is given twice; keep the one that is meant (line 1). Correct the text there."
    )]
    [InlineData(
        """{ "width": 4, "height": 3, "gain": 1e400 }""",
        "a.json, $.gain: the number is too large to be one; at most 1.8e308 can be read (line 1). Correct the text there."
    )]
    [InlineData("null", "a.json, $: found null instead of a camera. Describe one, at least its width and height.")]
    public void ErrorsNameThePlaceAndTheWayOut(string json, string message) =>
        Assert.Equal(
            message,
            Assert.Throws<CameraDescriptionException>(() => CameraDescription.Parse(json, "a.json")).Message
        );

    [Theory]
    [InlineData("""{ "width": 4, "height": "x" }""", "$.height")]
    [InlineData("""{ "width": 4, "height": 3, "shots": [{ "kind": "zero" }] }""", "$.shots[0].kind")]
    [InlineData("""{ "width": 4, "height": 3, "shots": [{ "kind": 1 }] }""", "$.shots[0].kind")]
    [InlineData("""{ "width": 4, "height": 3, "hotPixels": null }""", "$.hotPixels")]
    [InlineData("""{ "width": 4 }""", "$")]
    [InlineData("""{ "width": 4, """, "$")]
    public void ValuesOfTheWrongKindNameThePlace(string json, string path) =>
        Assert.Equal(path, Assert.Throws<CameraDescriptionException>(() => CameraDescription.Parse(json)).JsonPath);

    [Fact]
    public void MissingFieldsAreNamed() =>
        Assert.Contains(
            "height",
            Assert.Throws<CameraDescriptionException>(() => CameraDescription.Parse("""{ "width": 4 }""")).Problem,
            StringComparison.Ordinal
        );
}
