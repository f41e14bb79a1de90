using System.Reflection;
using SensorProfile.NoiseModel.Answers;

namespace SensorProfile.Tests.HouseRules;

/// <summary>Answers give verdicts, numbers and reasons as types; their sentences are made by the documents.</summary>
public class AnswersWithoutWordsTests
{
    private static readonly string[] rooms =
    [
        "SensorProfile.Decisions",
        "SensorProfile.Drift",
        "SensorProfile.NoiseModel",
    ];

    private static readonly string[] words =
    [
        "Sentence",
        "Reason",
        "Advice",
        "Verdict",
        "Cautions",
        "When",
        "Threshold",
    ];

    [Fact]
    public void NoAnswerCarriesItsOwnWords()
    {
        Type[] types =
        [
            .. typeof(Answer)
                .Assembly.GetTypes()
                .Where(t => rooms.Any(room => t.Namespace?.StartsWith(room, StringComparison.Ordinal) ?? false)),
        ];
        Assert.True(types.Count(t => t.IsSubclassOf(typeof(Answer))) >= 10);
        Assert.Empty(
            types
                .SelectMany(t => t.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic))
                .Where(p => words.Contains(p.Name) && IsText(p.PropertyType))
                .Select(p => $"{p.DeclaringType}.{p.Name}")
        );
    }

    private static bool IsText(Type type) =>
        type == typeof(string) || typeof(IEnumerable<string>).IsAssignableFrom(type);
}
