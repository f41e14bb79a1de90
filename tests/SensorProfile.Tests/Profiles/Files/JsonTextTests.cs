using System.Text;
using SensorProfile.Profiles.Files;

namespace SensorProfile.Tests.Profiles.Files;

/// <summary>What no reader of JSON may be given is named by its place.</summary>
public sealed class JsonTextTests
{
    [Theory]
    [InlineData(
        "{ \"a\": 1,\n \"b\": { \"c\": 2, \"c\": 3 } }",
        "$.b.c",
        2,
        "this name is given twice; keep the one that is meant."
    )]
    [InlineData("{ \"a\": 1, \"\\u0061\": 2 }", "$.a", 1, "this name is given twice; keep the one that is meant.")]
    [InlineData(
        "[ 1, [ 2,\n\n -1e999 ] ]",
        "$[1][1]",
        3,
        "the number is too large to be one; at most 1.8e308 can be read."
    )]
    [InlineData(
        "{ \"a\": [ {}, { \"b\": \"\\ud800\" } ] }",
        "$.a[1].b",
        1,
        "the text holds half of a character (an escape such as \\ud800 without its other half)."
    )]
    [InlineData(
        "{ \"a\": { \"\\udc00\": 1 } }",
        "$.a",
        1,
        "the text holds half of a character (an escape such as \\ud800 without its other half)."
    )]
    public void AFaultIsNamedByItsPlace(string json, string place, long line, string problem) =>
        Assert.Equal(new JsonFault(place, line, problem), JsonText.FirstFault(Encoding.UTF8.GetBytes(json)));

    [Theory]
    [InlineData(
        new byte[] { (byte)'{', (byte)'\n', (byte)'"', 0xC3, (byte)'"' },
        2,
        "byte 3 (0xC3) is not UTF-8 text."
    )]
    [InlineData(new byte[] { (byte)'"', 0xED, 0xA0, 0x80, (byte)'"' }, 1, "byte 1 (0xED) is not UTF-8 text.")]
    [InlineData(new byte[] { 0xFF, 0xFE, (byte)'{', 0 }, 1, "byte 0 (0xFF) is not UTF-8 text.")]
    public void BytesThatAreNoTextAreNamed(byte[] utf8, long line, string problem) =>
        Assert.Equal(new JsonFault(null, line, problem), JsonText.FirstFault(utf8));

    [Theory]
    [InlineData("{ \"a\": 1 } { \"b\": 2 }", 1)]
    [InlineData("{ \"a\":\n [ }", 2)]
    [InlineData("", 1)]
    public void WhatIsNoJsonIsNamedByItsLine(string text, long line)
    {
        JsonFault fault = JsonText.FirstFault(Encoding.UTF8.GetBytes(text))!;
        Assert.Equal((null, line), (fault.Place, fault.Line));
        Assert.StartsWith("this is not JSON: ", fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"a\": 1, \"b\": { \"a\": 1 }, \"c\": [ { \"a\": 1 }, { \"a\": 1 } ] }")]
    [InlineData("// a note\n{ \"pair\": \"\\ud835\\udd18\", \"small\": 1e-999, \"large\": 1.7e308, }")]
    [InlineData("[]")]
    public void WhatCanBeReadPasses(string json) => Assert.Null(JsonText.FirstFault(Encoding.UTF8.GetBytes(json)));

    /// <summary>The readers behind the door say it in their own way; before, these ended as faults of the program.</summary>
    [Theory]
    [InlineData("{ \"schemaVersion\": 1, \"a\": 1,\n \"a\": 2 }", "p.json, line 2, $.a: this name is given twice; ")]
    [InlineData(
        "{ \"schemaVersion\": 1,\n \"modes\": [ { \"x\": \"\\ud800\" } ] }",
        "p.json, line 2, $.modes[0].x: the text holds half"
    )]
    [InlineData(
        "{ \"schemaVersion\": 1, \"modes\": [ { \"biasLevel\": { \"value\": 1e999 } } ] }",
        "p.json, line 1, $.modes[0].biasLevel.value: the number is too large"
    )]
    public void AProfileIsRefusedByPlace(string json, string start) =>
        Assert.StartsWith(
            start,
            Assert
                .Throws<ProfileFormatException>(() => ProfileFile.Parse(Encoding.UTF8.GetBytes(json), "p.json"))
                .Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void ThresholdsAreRefusedByPlace() =>
        Assert.StartsWith(
            "t.json, line 1, $.hotRate: this name is given twice; ",
            Assert
                .Throws<ProfileFormatException>(() =>
                    ThresholdFile.Parse("{ \"hotRate\": 1, \"hotRate\": 2 }"u8, "t.json")
                )
                .Message,
            StringComparison.Ordinal
        );
}
