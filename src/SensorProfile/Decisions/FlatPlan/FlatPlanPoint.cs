namespace SensorProfile.Decisions.FlatPlan;

/// <summary>What a number of flats costs.</summary>
/// <param name="Flats">Frames in the master.</param>
/// <param name="Loss">Rise of the stack's noise, %.</param>
internal sealed record FlatPlanPoint(int Flats, double Loss);
