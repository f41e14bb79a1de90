namespace SensorProfile.NoiseModel.Noise;

/// <summary>How many darks a stack needs: the smallest n with √(1 + (N_d²/n)/(N²/M)) − 1 ≤ p.</summary>
internal static class MinDarks
{
    /// <summary>Fewest darks in a master, so that a cosmic-ray hit can be told from the rest.</summary>
    internal const int MinInMaster = 5;

    /// <summary>Rise of the stack's noise by n darks, as a share.</summary>
    /// <param name="varianceRatio">N_d²/N²: one dark against one light.</param>
    /// <param name="lights">M; with k dither positions M/k, because the master is then averaged too.</param>
    /// <param name="darks">n.</param>
    internal static double Loss(double varianceRatio, double lights, double darks) =>
        Math.Sqrt(1 + varianceRatio * lights / darks) - 1;

    /// <summary>
    /// The number to take: the smallest n, but at least enough to recognise a cosmic-ray hit. The same for every
    /// question.
    /// </summary>
    /// <inheritdoc cref="Smallest"/>
    internal static double InMaster(double varianceRatio, double lights, double loss) =>
        Math.Max(Smallest(varianceRatio, lights, loss), MinInMaster);

    /// <summary>The smallest n.</summary>
    /// <param name="varianceRatio">N_d²/N².</param>
    /// <param name="lights">M, or M/k.</param>
    /// <param name="loss">p, above 0.</param>
    internal static double Smallest(double varianceRatio, double lights, double loss)
    {
        double n = Math.Max(Math.Ceiling(varianceRatio * lights / ((1 + loss) * (1 + loss) - 1)), 1);
        if (n > 1 && Loss(varianceRatio, lights, n - 1) <= loss)
            return n - 1; // rounding in the division
        return Loss(varianceRatio, lights, n) <= loss ? n : n + 1;
    }
}
