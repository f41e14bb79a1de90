namespace SensorProfile.Decisions.DarkPlan;

/// <summary>When to shoot a master dark with a camera that has no cooler.</summary>
internal enum MasterTime
{
    /// <summary>After the lights: the sensor is then that cold.</summary>
    EndOfNight,

    /// <summary>Whenever the sensor is near that temperature.</summary>
    NearTemperature,
}
