namespace SensorProfile.Fitting.Statistics;

/// <summary>What a clip calls one σ: the population standard deviation, or the scaled MAD.</summary>
internal enum ClipSpread
{
    StandardDeviation,
    MadSigma,
}
