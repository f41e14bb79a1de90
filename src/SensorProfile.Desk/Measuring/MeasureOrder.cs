namespace SensorProfile.Desk.Measuring;

/// <summary>What to measure, and where to.</summary>
internal sealed record MeasureOrder
{
    /// <summary>The frames.</summary>
    public required string Folder { get; init; }

    /// <summary>The folder of the results.</summary>
    public required string Out { get; init; }

    /// <summary>The capture table; null when there is none.</summary>
    public string? Table { get; init; }

    /// <summary>Whether names of files and folders are believed.</summary>
    public bool NamesSay { get; init; }

    /// <summary>Whether results of this program may be replaced.</summary>
    public bool Overwrite { get; init; }

    /// <summary>Whether the temperature law of every single pixel is skipped.</summary>
    public bool Quick { get; init; }

    /// <summary>The command as it would be typed.</summary>
    public IReadOnlyList<string> Arguments =>
        [
            "characterise",
            Folder,
            "--out",
            Out,
            .. Table is null ? [] : new[] { "--table", Table },
            .. NamesSay ? ["--names-say"] : Array.Empty<string>(),
            .. Overwrite ? ["--overwrite"] : Array.Empty<string>(),
            .. Quick ? ["--quick"] : Array.Empty<string>(),
        ];
}
