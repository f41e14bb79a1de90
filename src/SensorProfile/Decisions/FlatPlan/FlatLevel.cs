namespace SensorProfile.Decisions.FlatPlan;

/// <summary>One level that flats could have.</summary>
/// <param name="Share">Mean of the frame as a share of the full well; null where that is not known.</param>
/// <param name="Electrons">Mean signal, e-.</param>
/// <param name="Adu">Mean level as a capture program shows it, with the bias level, ADU; null without gain or bias
/// level.</param>
/// <param name="Bend">
/// Gradient that the bent response leaves in the stack after such flats, in the noise of one of its pixels; null where
/// linearity was not tested.
/// </param>
/// <param name="Straight">Whether that is below the accepted smooth residual; true where no level was tested.</param>
/// <param name="Unsaturated">Whether the brightest pixels stay in the linear range.</param>
/// <param name="Flats">The smallest number of flats that stays within the loss; null when none does.</param>
public sealed record FlatLevel(
    double? Share,
    double Electrons,
    double? Adu,
    double? Bend,
    bool Straight,
    bool Unsaturated,
    int? Flats
);
