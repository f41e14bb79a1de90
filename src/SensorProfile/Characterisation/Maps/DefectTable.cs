using System.Globalization;
using SensorProfile.FixedPattern.Defects;
using SensorProfile.FixedPattern.Telegraph;
using SensorProfile.Profiles;
using static System.FormattableString;

namespace SensorProfile.Characterisation.Maps;

/// <summary>Defect pixels one by one as CSV (RFC 4180).</summary>
internal static class DefectTable
{
    /// <summary>
    /// Pixels that only belong to a defect line, as many as the line is long: the map shows them, the table leaves them
    /// out.
    /// </summary>
    private const DefectClass NotListed = DefectClass.Line;

    // The level columns are filled for pixels that jump between levels: the largest step in a frame (amplitude); the
    // same as a rate where it grows with the dark signal, empty where it is the same in every frame; the share of frames
    // in the upper level; changes seen; mean times in the upper and lower level, empty where the frames cannot tell, and
    // the factor they are good to.

    /// <summary>Writes the table; returns its path, or null when no mode has a defect map.</summary>
    public static string? Write(CharacterisationResult result, string path)
    {
        if (result.Maps.All(m => m.Defects is null))
            return null;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        AtomicFile.Write(path, stream =>
        {
            using var writer = new StreamWriter(stream, leaveOpen: true) { NewLine = "\r\n" };
            writer.WriteLine(
                "x,y,kind,rate,rate_uncertainty,doubling,read_noise,mode,levels,amplitude,amplitude_uncertainty,"
                    + "amplitude_rate,upper_share,switches,dwell_upper,dwell_lower,dwell_factor,rate_unit"
            );
            for (int m = 0; m < result.Maps.Count; m++)
                foreach (string line in Lines(result.Maps[m], ModeLabel.Text(result.Profile.Modes[m].Settings)))
                    writer.WriteLine(line);
        });
        return path;
    }

    private static IEnumerable<string> Lines(ModeMaps maps, string mode)
    {
        for (int i = 0; i < (maps.Defects?.Length ?? 0); i++)
        {
            var found = (DefectClass)maps.Defects![i];
            if ((found & ~NotListed) == 0)
                continue;
            string quoted = $"\"{mode.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
            yield return string.Join(
                ',',
                Whole(i % maps.Width + 1),
                Whole(i / maps.Width + 1),
                DefectWords.Text(found),
                Number(maps.DarkRate ?? maps.DarkRateAdu, i),
                Number(maps.DarkRateUncertainty, i),
                Number(maps.Doubling, i),
                Number(maps.ReadNoise, i),
                quoted,
                Levels(maps.Levels.GetValueOrDefault(i)),
                maps.DarkRate is null && maps.DarkRateAdu is not null ? "ADU/px/s" : "e-/px/s"
            );
        }
    }

    /// <summary>
    /// What the level test says of a pixel; all columns empty for the others. Amplitudes in e-, rates in e-/px/s at the
    /// reference temperature, dwell times in s.
    /// </summary>
    private static string Levels(TelegraphFit? fit)
    {
        if (fit is null)
            return ",,,,,,,,";
        double scale = fit.LargestStep / fit.Step;
        string rate = fit.Thermal ? fit.Step.ToString("G6", CultureInfo.InvariantCulture) : "";
        return Invariant($"{fit.Levels},{fit.LargestStep:G6},{fit.StepUncertainty * scale:G3},{rate},")
            + Invariant($"{fit.UpperShare:0.###},{fit.Switches},{fit.Dwell?.UpperSeconds:G4},")
            + Invariant($"{fit.Dwell?.LowerSeconds:G4},{fit.Dwell?.Factor:G3}");
    }

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Number<T>(T[]? map, int i)
        where T : System.Numerics.IFloatingPoint<T> =>
        map is null || !T.IsFinite(map[i]) ? "" : map[i].ToString("R", CultureInfo.InvariantCulture);
}
