using System.Security.Cryptography;
using System.Text;

namespace SensorProfile.Desk.Guarding;

/// <summary>A random word that whoever opens the desk must know; it dies with the desk.</summary>
internal sealed class DeskSecret
{
    /// <summary>Its name in the address.</summary>
    public const string Parameter = "key";

    private const int Digits = 32; // 128 bits

    /// <summary>The word.</summary>
    public string Text { get; } = RandomNumberGenerator.GetHexString(Digits, lowercase: true);

    /// <summary>Whether it is the word; takes as long for a near miss as for any other.</summary>
    public bool Is(string? word) =>
        word is not null
        && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(word), Encoding.UTF8.GetBytes(Text));
}
