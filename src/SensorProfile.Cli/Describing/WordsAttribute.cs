namespace SensorProfile.Cli.Describing;

/// <summary>The words that an option or argument takes, for those who complete what is typed.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal abstract class WordsAttribute : Attribute
{
    public abstract IReadOnlyList<string> Words { get; }
}
