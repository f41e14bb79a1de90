namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>Distribution of the excess rates of a defect population.</summary>
public enum DefectTail
{
    /// <summary>P(rate > r) = (minimum/r)^slope.</summary>
    PowerLaw,

    /// <summary>ln(rate) is normal.</summary>
    LogNormal,
}
