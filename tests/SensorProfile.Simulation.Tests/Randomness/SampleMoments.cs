namespace SensorProfile.Simulation.Tests.Randomness;

/// <summary>Two-pass central moments of a sample, with N in the denominator.</summary>
internal sealed record SampleMoments(double Mean, double Second, double Third, double Fourth)
{
    public static SampleMoments Of(double[] sample)
    {
        double mean = sample.Average();
        double second = 0,
            third = 0,
            fourth = 0;
        foreach (double value in sample)
        {
            double d = value - mean;
            second += d * d;
            third += d * d * d;
            fourth += d * d * d * d;
        }
        return new SampleMoments(mean, second / sample.Length, third / sample.Length, fourth / sample.Length);
    }
}
