namespace SensorProfile.Raw.Containers;

/// <summary>Reads tags that a frame does not need: faults in them become warnings.</summary>
internal static class OptionalTags
{
    /// <summary>Reads a tag; on a fault uses a substitute and adds a warning.</summary>
    /// <typeparam name="T">Type of the value.</typeparam>
    /// <param name="directory">Directory of the tag; null gives the substitute.</param>
    /// <param name="tag">The tag.</param>
    /// <param name="warnings">Receives the warning.</param>
    /// <param name="read">Reads it.</param>
    /// <param name="substitute">Value used when the tag cannot be read.</param>
    public static T Read<T>(
        TiffDirectory? directory,
        Tag tag,
        List<RawWarning> warnings,
        Func<TiffDirectory, T> read,
        T substitute
    )
    {
        if (directory is null)
            return substitute;
        try
        {
            return read(directory);
        }
        catch (RawFormatException problem)
        {
            warnings.Add(Passed(directory, tag, problem.Problem));
            return substitute;
        }
    }

    /// <summary>The warning that a tag was ignored.</summary>
    public static RawWarning Passed(TiffDirectory directory, Tag tag, string problem) =>
        new(RawWarningCodes.MeaninglessTag, directory.Location(tag), problem + " The tag was ignored.");
}
