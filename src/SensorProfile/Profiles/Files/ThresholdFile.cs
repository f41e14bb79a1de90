using System.Text.Json;
using System.Text.Json.Nodes;
using SensorProfile.Profiles.Pattern;

namespace SensorProfile.Profiles.Files;

/// <summary>
/// Reads the thresholds of the defect search from a user's file: some of the names of <see cref="DefectThresholds"/>,
/// or a profile whose thresholds are to be used again.
/// </summary>
public static class ThresholdFile
{
    /// <summary>
    /// Reads thresholds; those that the file does not name keep their defaults. A profile also supplies the temperature
    /// that its rates refer to, °C.
    /// </summary>
    /// <param name="path">For example <c>{ "hotRate": 0.5, "warmRate": 0.1 }</c>, or a <c>profile.json</c>.</param>
    /// <exception cref="ProfileFormatException">The file is not a JSON object, names something else, holds a value that
    /// makes no sense, or is a profile without thresholds or with several sets of them.</exception>
    /// <exception cref="IOException">The file is missing or cannot be read.</exception>
    public static (DefectThresholds Thresholds, double? ReferenceTemperature) Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Parse(File.ReadAllBytes(path), path);
    }

    /// <summary>Reads thresholds from the bytes of a file.</summary>
    /// <param name="utf8">The content.</param> <param name="file">Its name for messages.</param>
    internal static (DefectThresholds Thresholds, double? ReferenceTemperature) Parse(
        ReadOnlySpan<byte> utf8,
        string file
    )
    {
        utf8 = JsonText.WithoutMark(utf8);
        JsonObject given = ProfileFile.Document(utf8, file, Example)
            ?? throw new ProfileFormatException(
                file,
                null,
                null,
                "this is JSON, but not a set of names and numbers.",
                Example
            );
        if (given.ContainsKey("schemaVersion"))
            return OfProfile(ProfileFile.Parse(utf8, file), file);
        string[] known = [.. ProfileJson.Instance.DefectThresholds.Properties.Select(p => p.Name)];
        if (given.Select(p => p.Key).FirstOrDefault(name => !known.Contains(name)) is { } unknown)
            throw new ProfileFormatException(
                file,
                null,
                null,
                $"there is no threshold “{unknown}”.",
                $"The names are {string.Join(", ", known)}."
            );
        try
        {
            ProfileDefaults.Fill<DefectThresholds>(given);
            DefectThresholds thresholds = given.Deserialize(ProfileJson.Instance.DefectThresholds)!;
            return thresholds.Problem() is { } problem
                ? throw new ProfileFormatException(file, null, null, problem, "Correct the file.")
                : (thresholds, null);
        }
        catch (JsonException problem)
        {
            throw new ProfileFormatException(
                file,
                problem.Path,
                JsonLine.Find(utf8, problem.Path),
                ProfileFile.FirstSentence(problem.Message),
                "Thresholds are plain numbers.",
                problem
            );
        }
    }

    private const string Example = "Write for example { \"hotRate\": 0.5, \"warmRate\": 0.1 }, rates in e-/px/s.";

    private static (DefectThresholds Thresholds, double? ReferenceTemperature) OfProfile(
        CameraProfile profile,
        string file
    )
    {
        (DefectThresholds, double?)[] found =
        [
            .. profile
                .Modes.Select(m => m.FixedPattern)
                .OfType<FixedPatternProfile>()
                .Where(p => p.Thresholds is not null)
                .Select(p => (p.Thresholds!, p.ReferenceTemperature))
                .Distinct(),
        ];
        return found switch
        {
            [var one] when one.Item1.Problem() is { } problem => throw new ProfileFormatException(
                file,
                null,
                null,
                $"the thresholds of this profile make no sense: {problem}",
                Example
            ),
            [var one] => one,
            [] => throw new ProfileFormatException(
                file,
                null,
                null,
                "this profile holds no thresholds: its pixels were not searched for defects.",
                Example
            ),
            _ => throw new ProfileFormatException(
                file,
                null,
                null,
                "this profile holds several settings, each with thresholds of its own.",
                "Copy the ones you want into a file of their own."
            ),
        };
    }
}
