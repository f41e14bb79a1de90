namespace SensorProfile.Cli.Defaults;

/// <summary>What follows the command on a command line: options with their values, and plain words.</summary>
internal sealed class TypedArguments
{
    private readonly Dictionary<string, string?> options = [];
    private readonly List<string> words = [];

    public TypedArguments(IReadOnlyList<string> arguments, SettingsOptions known)
    {
        for (int i = 0; i < arguments.Count; i++)
        {
            string word = arguments[i];
            if (!word.StartsWith('-'))
            {
                words.Add(word);
                continue;
            }
            int equals = word.IndexOf('=');
            string name = equals < 0 ? word : word[..equals];
            bool valueFollows = equals < 0 && known.TakesValue(name) && i + 1 < arguments.Count;
            options[name] =
                equals >= 0 ? word[(equals + 1)..]
                : valueFollows ? arguments[++i]
                : null;
        }
    }

    public IReadOnlyList<string> Words => words;

    public bool Asks(string option) => options.ContainsKey(option);

    public bool AsksAny(params ReadOnlySpan<string> names)
    {
        foreach (string name in names)
            if (Asks(name))
                return true;
        return false;
    }

    public string? ValueOf(string option) => options.GetValueOrDefault(option);
}
