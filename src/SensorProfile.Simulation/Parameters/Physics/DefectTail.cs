namespace SensorProfile.Simulation.Parameters.Physics;

/// <summary>How the excess rates of a population of defects are distributed.</summary>
public enum DefectTail
{
    /// <summary>P(rate > r) = (minimum/r)^slope.</summary>
    PowerLaw,

    /// <summary>ln rate is normal.</summary>
    LogNormal,
}
