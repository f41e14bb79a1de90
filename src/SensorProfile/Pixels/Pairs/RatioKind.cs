namespace SensorProfile.Pixels.Pairs;

/// <summary>How the light of the second frame of a flat pair is matched to that of the first.</summary>
internal enum RatioKind
{
    /// <summary>One ratio for the whole channel: the lamp drifted between the frames.</summary>
    WholeFrame,

    /// <summary>One ratio for each row: the lamp flickered under a rolling shutter.</summary>
    RowByRow,
}
