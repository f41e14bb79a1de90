namespace SensorProfile.Cli.Describing;

/// <summary>Takes the values of an enumeration, typed as everywhere: "sigma-clip".</summary>
internal sealed class WordsOfAttribute<TEnum> : WordsAttribute
    where TEnum : struct, Enum
{
    public override IReadOnlyList<string> Words => [.. Enum.GetValues<TEnum>().Select(v => EnumWord.Of(v))];
}
