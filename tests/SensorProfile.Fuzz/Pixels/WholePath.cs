using System.Globalization;
using System.Text;
using System.Text.Json;
using SensorProfile.Cli;
using SensorProfile.Cli.Terminal;

namespace SensorProfile.Fuzz.Pixels;

/// <summary>Runs the commands a user would, in this process, and looks at everything that comes out.</summary>
internal sealed partial class WholePath(string folder)
{
    private readonly List<string> faults = [];

    /// <summary>What must not be: faults of the program, numbers that are none, uncertainties that are none.</summary>
    public IReadOnlyList<string> Faults => faults;

    /// <summary>From a folder of frames to every answer.</summary>
    public void Go(string frames, int seed)
    {
        string results = Path.Combine(folder, "results");
        string[] quick = seed % 3 == 0 ? ["--quick"] : [];
        Run("survey", frames, "--json");
        int code = Run(["characterise", frames, "--out", results, "--json", .. quick]);
        LookAtFiles(results);
        if (code > 1)
            return;
        if (seed % 4 == 0)
            Run("report", results, "--out", Path.Combine(folder, "again"), "--json");
        Run("setpoint", results, "--exposure", "300", "--json", "--three-skies");
        Run("setpoint", results, "--exposure", "60", "--ambient", "25", "--max-delta", "35", "--sky", "1", "--json");
        Run("exposure", results, "--sky", "0.5", "--json");
        Run("darks", "match", results, "--exposure", "300", "--lights", "30", "--json");
        Run("darks", "plan", results, "--exposure", "300", "--lights", "30", "--json");
        string dark = Directory.GetFiles(frames, "dark*").Order(StringComparer.Ordinal).FirstOrDefault() ?? frames;
        Run("darks", "check", dark, "--against", frames, "--profile", results, "--json");
        Run("darks", "match", "--lights", frames, "--darks", frames, "--profile", results, "--json");
        Run(
            "darks",
            "predict",
            results,
            "--temperature",
            "-5",
            "--exposure",
            "180",
            "--out",
            Path.Combine(folder, "p.fits"),
            "--json"
        );
        Run("drift", results, results, "--out", Path.Combine(folder, "drift"), "--json");
    }

    private int Run(params string[] arguments)
    {
        FirstThrown.Forget();
        var output = new MemoryStream();
        using var error = new StringWriter(CultureInfo.InvariantCulture);
        using var stop = new CancellationTokenSource();
        int code = CommandLine.Run(
            arguments,
            new Session(
                new ResultStream(() => new MemoryStreamThatStays(output), isTerminal: false),
                new StandardErrorStream(error, isTerminal: false, TimeProvider.System),
                TimeProvider.System,
                stop.Token
            )
        );
        string name = string.Join(' ', arguments.TakeWhile(a => !a.Contains('/') && !a.StartsWith('-')));
        if (code is not (>= 0 and <= 4))
            faults.Add($"{name}: exit code {code}: {FirstThrown.Place() ?? error.ToString()}");
        else if (code is 2 && !error.ToString().Contains("say which gain", StringComparison.Ordinal))
            faults.Add($"{name}: {error.ToString().Trim()}"); // a command line of this program's own making
        else if (code is 0 or 1)
            LookAtJson(name, output.ToArray());
        return code;
    }

    private void LookAtJson(string name, byte[] utf8)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(utf8);
            LookAt(name, document.RootElement, "$");
        }
        catch (JsonException problem)
        {
            faults.Add($"{name}: no JSON: {problem.Message}");
        }
    }

    private void LookAt(string name, JsonElement element, string place)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty field in element.EnumerateObject())
                {
                    if (
                        field.Name.EndsWith("ncertainty", StringComparison.Ordinal)
                        && field.Value.ValueKind == JsonValueKind.Number
                        && field.Value.GetDouble() < 0
                    )
                        faults.Add($"{name}: negative uncertainty at {place}.{field.Name}");
                    LookAt(name, field.Value, $"{place}.{field.Name}");
                }
                break;
            case JsonValueKind.Array:
                foreach (JsonElement item in element.EnumerateArray())
                    LookAt(name, item, place + "[]");
                break;
            case JsonValueKind.Number when !double.IsFinite(element.GetDouble()):
                faults.Add($"{name}: no finite number at {place}");
                break;
            case JsonValueKind.String when NotANumber(element.GetString()!) is { } found:
                faults.Add($"{name}: '{found}' at {place}");
                break;
        }
    }

    private void LookAtFiles(string results)
    {
        if (!Directory.Exists(results))
            return;
        foreach (string file in Directory.EnumerateFiles(results, "*", SearchOption.AllDirectories))
        {
            string name = Path.GetRelativePath(results, file);
            if (file.EndsWith(".json", StringComparison.Ordinal))
                LookAtJson(name, File.ReadAllBytes(file));
            else if (
                (file.EndsWith(".csv", StringComparison.Ordinal) || file.EndsWith(".html", StringComparison.Ordinal))
                && NotANumber(WithoutImages(File.ReadAllText(file, Encoding.UTF8))) is { } found
            )
                faults.Add($"{name}: '{found}'");
        }
    }

    /// <summary>The fonts and pictures that a page carries are letters by chance.</summary>
    private static string WithoutImages(string text) =>
        System.Text.RegularExpressions.Regex.Replace(text, "base64,[A-Za-z0-9+/=]*", "");

    /// <summary>A number that is none; what a message quotes from a header or a pixel may be one.</summary>
    private static string? NotANumber(string text)
    {
        text = Quoted().Replace(text, "");
        foreach (string word in new[] { "NaN", "Infinity", "∞" })
        {
            int at = text.IndexOf(word, StringComparison.Ordinal);
            if (at >= 0 && !IsPartOfAName(text, at, word))
                return text[Math.Max(0, at - 30)..Math.Min(text.Length, at + 20)].ReplaceLineEndings(" ");
        }
        return null;
    }

    [System.Text.RegularExpressions.GeneratedRegex(
        "= NaN\\b|'NaN'|\\(-?Infinity, at column|\\(NaN, at column|= NaN in"
    )]
    private static partial System.Text.RegularExpressions.Regex Quoted();

    private static bool IsPartOfAName(string text, int at, string word) =>
        (at > 0 && char.IsLetterOrDigit(text[at - 1]))
        || (at + word.Length < text.Length && char.IsLetterOrDigit(text[at + word.Length]));

    private sealed class MemoryStreamThatStays(MemoryStream inner) : MemoryStream
    {
        public override void Write(ReadOnlySpan<byte> buffer) => inner.Write(buffer);

        public override void Write(byte[] buffer, int offset, int count) => inner.Write(buffer, offset, count);
    }
}
