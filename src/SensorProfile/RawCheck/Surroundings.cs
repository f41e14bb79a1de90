namespace SensorProfile.RawCheck;

/// <summary>
/// What a pixel is compared with: four pixels of its channel at its sides, eight around it, or 24 (five by five).
/// </summary>
internal enum Surroundings
{
    /// <summary>Median of eight.</summary>
    MedianOfEight,

    /// <summary>Mean of eight.</summary>
    MeanOfEight,

    /// <summary>Brightest of eight.</summary>
    LargestOfEight,

    /// <summary>Median of four.</summary>
    MedianOfFour,

    /// <summary>Mean of four.</summary>
    MeanOfFour,

    /// <summary>Brightest of four.</summary>
    LargestOfFour,

    /// <summary>Median of 24.</summary>
    MedianOfMany,

    /// <summary>Mean of 24.</summary>
    MeanOfMany,

    /// <summary>Brightest of 24.</summary>
    LargestOfMany,
}
