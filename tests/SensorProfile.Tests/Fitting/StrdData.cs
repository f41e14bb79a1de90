using System.Globalization;

namespace SensorProfile.Tests.Fitting;

/// <summary>Reads the NIST Statistical Reference Datasets, certified values and data, from their .dat files.</summary>
internal sealed class StrdData
{
    public required double[][] Rows { get; init; } // one array per observation: y, x1, x2 …
    public required double[] Certified { get; init; }
    public required double[] Deviations { get; init; }
    public double[][] Starts { get; init; } = []; // start 1, start 2 (nonlinear sets)
    public double ResidualSumOfSquares { get; init; }
    public double ResidualStandardDeviation { get; init; }

    public double[] Y => [.. Rows.Select(r => r[0])];

    public double[] X(int predictor = 0) => [.. Rows.Select(r => r[1 + predictor])];

    public static StrdData Regression(string name)
    {
        string[] lines = File.ReadAllLines(TestData.Path($"nist-strd/{name}.dat"));
        double[][] rows = [.. lines.Skip(60).Select(Numbers).Where(r => r.Length >= 2)];
        bool nonlinear = lines.Any(l => l.Contains("Starting", StringComparison.OrdinalIgnoreCase));
        var values = new List<double[]>();
        foreach (string line in lines.Take(60))
        {
            string text = line.Trim();
            if (nonlinear && text.StartsWith('b') && text.Contains('='))
            {
                double[] numbers = Numbers(text[(text.IndexOf('=', StringComparison.Ordinal) + 1)..]);
                if (numbers.Length == 4)
                    values.Add(numbers);
            }
            else if (!nonlinear && text.Length > 2 && text[0] == 'B' && char.IsDigit(text[1]))
            {
                double[] numbers = Numbers(text[text.IndexOf(' ', StringComparison.Ordinal)..]);
                if (numbers.Length == 2)
                    values.Add(numbers);
            }
        }
        return new StrdData
        {
            Rows = rows,
            Certified = [.. values.Select(v => v[^2])],
            Deviations = [.. values.Select(v => v[^1])],
            Starts = nonlinear
                ?
                [
                    [.. values.Select(v => v[0])],
                    [.. values.Select(v => v[1])],
                ]
                : [],
            ResidualSumOfSquares = After(lines, "Residual Sum of Squares:"),
            ResidualStandardDeviation = nonlinear
                ? After(lines, "Residual Standard Deviation:")
                : LinearDeviation(lines),
        };
    }

    public static double[] Univariate(string name)
    {
        string[] lines = File.ReadAllLines(TestData.Path($"nist-strd/{name}.dat"));
        int rule = Array.FindLastIndex(lines, l => l.StartsWith("----", StringComparison.Ordinal));
        return [.. lines.Skip(rule + 1).SelectMany(Numbers)];
    }

    private static double LinearDeviation(string[] lines) =>
        Numbers(
            lines[
                Array.FindIndex(lines, l =>
                    l.Contains("Standard Deviation  ", StringComparison.Ordinal)
                    && Numbers(l.Replace("Standard Deviation", "", StringComparison.Ordinal)).Length == 1
                )
            ]
                .Replace("Standard Deviation", "", StringComparison.Ordinal)
        )[0];

    private static double After(string[] lines, string label)
    {
        string? line = lines.FirstOrDefault(l => l.Contains(label, StringComparison.Ordinal));
        return line is null
            ? double.NaN
            : Numbers(line[(line.IndexOf(label, StringComparison.Ordinal) + label.Length)..])[0];
    }

    private static double[] Numbers(string line)
    {
        var numbers = new List<double>();
        foreach (string word in line.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            if (double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
                numbers.Add(number);
            else
                return [];
        return [.. numbers];
    }
}
