using SensorProfile.Frames;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Answers;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;

namespace SensorProfile.Decisions.DarkPlan;

/// <summary>Which of the planned lights are within reach of the profile.</summary>
internal static class PlanReach
{
    /// <summary>The slices within reach; the others are entered as unplanned.</summary>
    internal static IEnumerable<LightSlice> Within(
        SensorReader reader,
        PlannedLights plan,
        SkyRate sky,
        PlanCourse course,
        List<Finding> findings
    )
    {
        LightSlice[] slices = [.. LightSlice.Split(plan).OrderBy(s => s.Celsius)];
        double coldest = slices[0].Celsius,
            warmest = slices[^1].Celsius;
        if (plan.Temperatures.Count == 0)
            (coldest, warmest) = (
                Math.Min(plan.StartCelsius, plan.EndCelsius ?? plan.StartCelsius),
                Math.Max(plan.StartCelsius, plan.EndCelsius ?? plan.StartCelsius)
            );
        try
        {
            findings.AddRange(Guard.Exposure(reader, plan.ExposureSeconds));
        }
        catch (DecisionRefusedException refused) when (refused.Kind == RefusalKind.CannotTell)
        {
            double near = Math.Clamp(plan.StartCelsius, reader.Range.Low, reader.Range.High);
            Enter(
                course,
                plan,
                slices,
                refused,
                [SettlingFrames.Of(FrameKind.Dark, plan.ExposureSeconds, Math.Round(near), SettlingFrames.EachDark)]
            );
            return [];
        }
        if (slices.LastOrDefault(s => White(reader, sky, s) is not null) is { } white)
        {
            Enter(
                course,
                plan,
                [.. slices.Where(s => White(reader, sky, s) is not null)],
                White(reader, sky, white)!,
                []
            );
            slices = [.. slices.Where(s => White(reader, sky, s) is null)];
            if (slices.Length == 0)
                return [];
            warmest = Math.Min(warmest, slices[^1].Celsius);
        }
        LightSlice[] cold = [.. slices.Where(s => Refused(reader, s.Celsius) && s.Celsius < reader.Range.Low)],
            warm = [.. slices.Where(s => Refused(reader, s.Celsius) && s.Celsius > reader.Range.High)];
        if (cold.Length > 0)
            Beyond(reader, course, plan, cold, coldest);
        if (warm.Length > 0)
            Beyond(reader, course, plan, warm, warmest);
        LightSlice[] within = [.. slices.Where(s => !cold.Contains(s) && !warm.Contains(s))];
        if (within.Length > 0)
            foreach (
                double celsius in new[]
                {
                    warm.Length > 0 ? within[^1].Celsius : warmest,
                    cold.Length > 0 ? within[0].Celsius : coldest,
                }.Distinct()
            )
                findings.AddRange(
                    Guard.Temperature(reader, Reached(reader, celsius, within), "temperature of the lights")
                );
        return within;
    }

    /// <summary>
    /// If an end of the night lies just beyond the reach, the temperature of the nearest slice within reach stands for
    /// it.
    /// </summary>
    private static double Reached(SensorReader reader, double celsius, LightSlice[] within) =>
        Refused(reader, celsius) ? within.MinBy(s => Math.Abs(s.Celsius - celsius))!.Celsius : celsius;

    private static DecisionRefusedException? White(SensorReader reader, SkyRate sky, LightSlice slice) =>
        FullPixels.White(reader, sky, slice.Plan.ExposureSeconds, slice.Celsius);

    private static bool Refused(SensorReader reader, double celsius) =>
        reader.Outside(celsius) > Refuse.ExtrapolationCelsius;

    private static void Beyond(
        SensorReader reader,
        PlanCourse course,
        PlannedLights plan,
        LightSlice[] beyond,
        double extreme
    ) =>
        Enter(
            course,
            plan,
            beyond,
            Guard.Refused(reader, Refused(reader, extreme) ? extreme : beyond[0].Celsius, "temperature of the lights")!,
            SettlingFrames.NewTemperature(plan.ExposureSeconds, extreme)
        );

    private static void Enter(
        PlanCourse course,
        PlannedLights plan,
        LightSlice[] slices,
        DecisionRefusedException refused,
        IReadOnlyList<SettlingFrames> settling
    )
    {
        course.Refused ??= refused;
        int lights = Math.Max((int)Math.Round(plan.Lights * slices.Sum(s => s.Share)), 1);
        course.Unplanned.Add(
            new UnplannedLights(
                plan.ExposureSeconds,
                slices.Min(s => s.Celsius),
                slices.Max(s => s.Celsius),
                lights,
                refused.ToFinding(),
                settling
            )
        );
    }
}
