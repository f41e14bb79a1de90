namespace SensorProfile.Frames;

/// <summary>Where the temperature of a frame comes from.</summary>
internal enum TemperatureOrigin
{
    /// <summary>Its header, or a table that repeats or corrects what a header says.</summary>
    Header,

    /// <summary>A thermometer's reading that was typed in for this frame, whose header says nothing.</summary>
    Typed,

    /// <summary>Inferred, in time or by the hot pixels, from readings that were typed in for other frames.</summary>
    Drawn,
}
