using System.Reflection;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Defaults;

/// <summary>The options and arguments of a command, read from its settings type.</summary>
internal sealed class SettingsOptions
{
    private static readonly string[] ofEveryCommand = ["--help", "-h", "-?"];
    private readonly Dictionary<string, bool> takesValue = ofEveryCommand.ToDictionary(name => name, _ => false);

    public SettingsOptions(Type settings)
    {
        foreach (PropertyInfo property in settings.GetProperties())
        {
            if (property.GetCustomAttribute<CommandOptionAttribute>() is { } option)
                foreach (string name in Names(option))
                    takesValue[name] = option.ValueName is not null;
            if (property.GetCustomAttribute<CommandArgumentAttribute>() is not { } word)
                continue;
            Places = property.PropertyType.IsArray ? int.MaxValue : Math.Max(Places, word.Position + 1);
            if (word is { Position: 0, ValueName: "PROFILE" })
                TakesOneProfile = property.PropertyType == typeof(string);
        }
    }

    /// <summary>Whether the first argument of the command is a single profile.</summary>
    public bool TakesOneProfile { get; }

    /// <summary>Number of arguments that the command takes.</summary>
    public int Places { get; }

    public bool Has(string option) => takesValue.ContainsKey(option);

    /// <summary>Whether the option takes the word after it as its value.</summary>
    public bool TakesValue(string option) => takesValue.GetValueOrDefault(option);

    private static IEnumerable<string> Names(CommandOptionAttribute option) =>
        option.LongNames.Select(name => "--" + name).Concat(option.ShortNames.Select(name => "-" + name));
}
