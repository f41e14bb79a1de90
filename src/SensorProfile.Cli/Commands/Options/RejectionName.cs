using SensorProfile.NoiseModel;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>How a stack treats outliers, as typed: the name of a method, or <c>--rejects</c> alone.</summary>
internal static class RejectionName
{
    public const string Description = "How the stack rejects outliers: none, sigma-clip, winsorised or median.";

    /// <exception cref="CommandFailure">The name is not known, or the two options contradict each other.</exception>
    public static Rejection Parse(string? name, bool rejects)
    {
        if (name is null)
            return rejects ? Rejection.SigmaClip : Rejection.None;
        Rejection[] known = Enum.GetValues<Rejection>();
        int place = Array.FindIndex(known, r => EnumWord.Of(r).Equals(name, StringComparison.OrdinalIgnoreCase));
        if (place < 0)
            throw CommandFailure.WrongCommandLine(
                $"--rejection knows {string.Join(", ", known.Select(r => EnumWord.Of(r)))}, not '{name}'."
            );
        return rejects && known[place] != Rejection.SigmaClip
            ? throw CommandFailure.WrongCommandLine(
                $"--rejects is --rejection sigma-clip: leave it out to ask for {EnumWord.Of(known[place])}."
            )
            : known[place];
    }
}
