using System.Reflection;
using Spectre.Console.Cli;

namespace SensorProfile.Cli.Defaults;

/// <summary>The options and arguments of a command, read off its settings.</summary>
internal sealed class SettingsOptions
{
    private readonly Dictionary<string, bool> takesValue = [];

    public SettingsOptions(Type settings)
    {
        foreach (PropertyInfo property in settings.GetProperties())
        {
            if (property.GetCustomAttribute<CommandOptionAttribute>() is { } option)
                foreach (string name in option.LongNames)
                    takesValue["--" + name] = property.PropertyType != typeof(bool);
            if (property.GetCustomAttribute<CommandArgumentAttribute>() is { Position: 0, ValueName: "PROFILE" })
                TakesOneProfile = property.PropertyType == typeof(string);
        }
    }

    /// <summary>Whether the first word after the command is a profile, and only one.</summary>
    public bool TakesOneProfile { get; }

    public bool Has(string option) => takesValue.ContainsKey(option);

    /// <summary>Whether the word after the option belongs to it.</summary>
    public bool TakesValue(string option) => takesValue.GetValueOrDefault(option);
}
