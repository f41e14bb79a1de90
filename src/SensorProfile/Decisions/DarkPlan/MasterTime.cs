namespace SensorProfile.Decisions.DarkPlan;

/// <summary>When to shoot a master dark with a camera that has no cooler.</summary>
internal enum MasterTime
{
    /// <summary>When the lights are done: the sensor is then that cold.</summary>
    EndOfNight,

    /// <summary>Whenever the sensor comes near its temperature.</summary>
    NearTemperature,
}
