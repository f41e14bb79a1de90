using SensorProfile.NoiseModel;

namespace SensorProfile.Decisions.Shots;

/// <summary>Refuses a shot list that no camera or night allows.</summary>
internal static class ShotGuard
{
    private const double LargestDifference = 120; // no such cooler reaches farther below the ambient, °C
    private const double LongestExposure = 86_400; // a day, s

    internal static void Check(ShotQuestion question)
    {
        if (question.Minutes is double minutes)
            Refuse.UnlessPositive(minutes, FindingCodes.MinutesNotPositive, "time", "min");
        double longest = question.LongestExposureSeconds ?? ShotList.UsualLongest;
        Refuse.UnlessPositive(longest, FindingCodes.ExposureNotPositive, "longest exposure", "s");
        if (longest > LongestExposure)
            throw Refuse.BadArgument(
                FindingCodes.ExposureTooLong,
                $"The longest exposure must be at most a day ({Plain.Seconds(LongestExposure)}): give that of your "
                    + "lights."
            );
        Refuse.UnlessCount(question.Width, 1, FindingCodes.SizeNotPositive, "pixels across a frame");
        Refuse.UnlessCount(question.Height, 1, FindingCodes.SizeNotPositive, "pixels along a frame");
        if (!(question.AmbientCelsius is > -90 and < 60))
            throw Refuse.BadArgument(
                FindingCodes.AmbientOutOfRange,
                $"An ambient temperature of {Plain.Number(question.AmbientCelsius)} °C is not between −90 °C and 60 °C."
            );
        if (question.Cooled && !(question.MaximumDifference > question.Margin))
            throw Refuse.CoolerTooWeak(question.MaximumDifference, question.Margin);
        if (question.Cooled && question.MaximumDifference > LargestDifference)
            throw Refuse.BadArgument(
                FindingCodes.DifferenceTooLarge,
                $"No cooler of such a camera reaches {Plain.Number(question.MaximumDifference)} °C below the "
                    + $"ambient: give at most {Plain.Number(LargestDifference)} °C."
            );
    }

    internal static DecisionRefusedException TooShort(string what, double seconds, double minutes, string remedy) =>
        Refuse.CannotTell(
            FindingCodes.TimeTooShort,
            $"{what} takes {Plain.Duration(seconds)}; {Plain.Number(minutes)} min are too few: {remedy}."
        );
}
