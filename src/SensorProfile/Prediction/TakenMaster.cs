using SensorProfile.FixedPattern.DarkRates;
using SensorProfile.FixedPattern.Input;
using SensorProfile.Pixels.Sums;

namespace SensorProfile.Prediction;

/// <summary>The mean of one set of darks, with which predictions are compared.</summary>
/// <param name="Temperature">Index of its temperature.</param>
/// <param name="Group">Index of the set within it.</param>
/// <param name="Series">Its temperature.</param> <param name="Exposure">Its exposure and frames.</param>
/// <param name="Mean">ADU, pixel by pixel.</param>
/// <param name="Variance">Variance of that mean, ADU²: noise of the typical pixel, the Poisson part of a pixel's excess
/// over it, and its scatter with the temperature.</param>
internal sealed record TakenMaster(
    int Temperature,
    int Group,
    DarkSeries Series,
    DarkExposure Exposure,
    float[] Mean,
    float[] Variance
)
{
    /// <summary>Averages every set of every temperature that made a line.</summary>
    public static IReadOnlyList<TakenMaster> All(PatternInput camera, RateMaps maps)
    {
        var masters = new List<TakenMaster>();
        for (int t = 0; t < maps.Temperatures.Count; t++)
        {
            (DarkSeries series, SeriesLevels levels) = maps.Temperatures[t];
            for (int g = 0; g < series.Exposures.Count; g++)
            {
                DarkExposure exposure = series.Exposures[g];
                float[] mean = new float[camera.Pixels],
                    variance = new float[camera.Pixels];
                GroupMoments.Walk([exposure.Frames], strip => strip.CopyTo(0, mean, variance), camera.Walk);
                double scatter = exposure.TemperatureScatter;
                for (int i = 0; i < mean.Length; i++)
                    variance[i] = (float)(
                        Expected(camera, maps, levels, scatter, g, i, mean[i], variance[i]) / exposure.Frames.Count
                    );
                masters.Add(new(t, g, series, exposure, mean, variance));
            }
        }
        return masters;
    }

    /// <summary>
    /// Variance of one frame, ADU²; a pixel that is known to scatter keeps its own where that is larger.
    /// </summary>
    private static double Expected(
        PatternInput camera,
        RateMaps maps,
        SeriesLevels levels,
        double scatter,
        int group,
        int pixel,
        double mean,
        double own
    )
    {
        int channel = camera.Mosaic.Channel(pixel / camera.Width, pixel % camera.Width);
        double gain = camera.Gains[channel],
            above = Math.Max(0, mean - levels.Levels[group][channel]) * gain,
            wobble = above * scatter;
        double expected = levels.Variances[group][channel] + (above + wobble * wobble) / (gain * gain);
        return maps.Flags[pixel].HasFlag(PixelFlags.Noisy) && own > expected ? own : expected;
    }
}
