using System.Reflection;
using Spectre.Console.Cli;
using Spectre.Console.Cli.Help;

namespace SensorProfile.Cli.Describing;

/// <summary>An option or an argument.</summary>
/// <param name="Names">Of an option, with its dashes; none of an argument.</param>
/// <param name="Value">Name of its value, as the help shows it; null of a switch.</param>
/// <param name="Description">From the help.</param>
/// <param name="Completes">What a shell can offer for the value.</param>
/// <param name="Words">The words that it takes, where it takes a fixed list.</param>
/// <param name="Repeats">May be given several times.</param>
/// <param name="IsRequired">Of an argument: must be there.</param>
internal sealed record ParameterShape(
    IReadOnlyList<string> Names,
    string? Value,
    string Description,
    Completes Completes,
    IReadOnlyList<string> Words,
    bool Repeats,
    bool IsRequired
)
{
    private static readonly string[] files = ["FILE", "PATH", "PROFILE", "MASTER", "CAMERA", "N|PATH"],
        folders = ["DIR", "FOLDER"];

    /// <summary>A switch that every command has.</summary>
    public static ParameterShape Switch(string description, params string[] names) =>
        new(names, null, description, Completes.Nothing, [], false, false);

    public static ParameterShape Of(ICommandOption option, Type settings) =>
        Of(
            option,
            [.. option.ShortNames.Select(n => "-" + n), .. option.LongNames.Select(n => "--" + n)],
            option.IsFlag ? null : option.ValueName,
            Property<CommandOptionAttribute>(settings, o => o.LongNames.Intersect(option.LongNames).Any())
        );

    public static ParameterShape Of(ICommandArgument argument, Type settings) =>
        Of(
            argument,
            [],
            argument.Value,
            Property<CommandArgumentAttribute>(settings, a => a.Position == argument.Position)
        );

    private static ParameterShape Of(ICommandParameter parameter, string[] names, string? value, PropertyInfo property)
    {
        IReadOnlyList<string> words = property.GetCustomAttribute<WordsAttribute>()?.Words ?? [];
        return new ParameterShape(
            names,
            value,
            parameter.Description ?? "",
            words.Count > 0 ? Completes.Words
                : files.Contains(value) ? Completes.Files
                : folders.Contains(value) ? Completes.Folders
                : Completes.Nothing,
            words,
            property.PropertyType.IsArray,
            parameter.IsRequired
        );
    }

    private static PropertyInfo Property<TAttribute>(Type settings, Func<TAttribute, bool> isIt)
        where TAttribute : Attribute =>
        settings.GetProperties().First(p => p.GetCustomAttribute<TAttribute>() is { } own && isIt(own));
}
