namespace SensorProfile.Simulation.Parameters.Sensor;

/// <summary>How a glow falls off.</summary>
public enum GlowShape
{
    /// <summary>exp(−d/width), d the distance from the left edge (first column), px.</summary>
    LeftEdge,

    /// <summary>exp(−d/width), d the distance from the right edge (last column), px.</summary>
    RightEdge,

    /// <summary>exp(−d/width), d the distance from the first row of the file, px.</summary>
    FirstRowEdge,

    /// <summary>exp(−d/width), d the distance from the last row of the file, px.</summary>
    LastRowEdge,

    /// <summary>exp(−r/width), r the distance from (x, y), px; with (x, y) in a corner it is a corner glow.</summary>
    Corner,

    /// <summary>exp(−r²/2·width²), r the distance from (x, y), px.</summary>
    Blob,
}
