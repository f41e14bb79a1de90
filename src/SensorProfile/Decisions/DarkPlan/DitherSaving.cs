namespace SensorProfile.Decisions.DarkPlan;

/// <summary>What dithering would save of a plan that asks for more darks than most people take.</summary>
/// <param name="Positions">Dither positions, k.</param>
/// <param name="Frames">Darks of the whole plan with them.</param>
/// <param name="Masters">Masters of the whole plan with them.</param>
internal sealed record DitherSaving(int Positions, int Frames, int Masters);
