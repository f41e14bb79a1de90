namespace SensorProfile.Decisions.Shots;

/// <summary>What a line of a shot list is for, and how to reach its conditions.</summary>
internal enum ShotPurpose
{
    /// <summary>Bias frames: read noise; with 8 or more, that of every pixel.</summary>
    ReadNoise,

    /// <summary>The first pair of flats under an even, dim light: gain and linearity.</summary>
    DimLight,

    /// <summary>A pair of flats under the same light, exposed longer.</summary>
    SameLight,

    /// <summary>A pair of flats exposed until it is evenly white: saturation and full well.</summary>
    White,

    /// <summary>Darks: set the cooler and wait.</summary>
    SetCooler,

    /// <summary>Darks in a room, after half an hour of running.</summary>
    InRoom,

    /// <summary>Darks outside at night, after half an hour of running.</summary>
    OutsideAtNight,

    /// <summary>Darks in a cool room or outside in the evening.</summary>
    CoolPlace,

    /// <summary>Darks where the sensor read this temperature before.</summary>
    AsBefore,

    /// <summary>Darks at the temperature of the previous line.</summary>
    SameTemperature,

    /// <summary>Darks at the stated temperature; nothing to wait for.</summary>
    ThisTemperature,
}
