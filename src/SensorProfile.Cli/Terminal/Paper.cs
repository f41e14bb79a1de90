namespace SensorProfile.Cli.Terminal;

/// <summary>What lines are laid out for: so many columns, and the letters that are there.</summary>
internal readonly record struct Paper(int Width, Letters Letters)
{
    /// <summary>The text on one line, as it will stand there.</summary>
    public string Line(string text) => Letters.Shown(Printable.Escape(text));
}
