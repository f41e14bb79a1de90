using System.Security.Cryptography;
using System.Text;

namespace SensorProfile.Desk.Guarding;

/// <summary>A random key that whoever opens the desk must know; it expires with the desk.</summary>
internal sealed class DeskSecret
{
    /// <summary>Name of the parameter in the address.</summary>
    public const string Parameter = "key";

    private const int Digits = 32; // 128 bits

    /// <summary>The key.</summary>
    public string Text { get; } = RandomNumberGenerator.GetHexString(Digits, lowercase: true);

    /// <summary>Compares in constant time, so that timing does not reveal a near miss.</summary>
    public bool Is(string? word) =>
        word is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(word), Encoding.UTF8.GetBytes(Text));
}
