using System.Security.Cryptography;
using System.Text;
using SensorProfile.Characterisation.Summaries;

namespace SensorProfile.Tests.Characterisation.Summaries;

/// <summary>Held against NIST's examples of FIPS 180 and against the runtime's own.</summary>
public sealed class Sha256Tests
{
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    )]
    public void GivesTheDigestOfTheStandard(string message, string digest) =>
        Assert.Equal(digest, Sha256.Hex(Encoding.ASCII.GetBytes(message)));

    [Fact]
    public void GivesTheRuntimesDigestAtEveryLength()
    {
        byte[] bytes = new byte[200];
        new Random(3).NextBytes(bytes);
        for (int length = 0; length <= bytes.Length; length++)
            Assert.Equal(
                Convert.ToHexStringLower(SHA256.HashData(bytes.AsSpan(0, length))),
                Sha256.Hex(bytes.AsSpan(0, length))
            );
    }
}
