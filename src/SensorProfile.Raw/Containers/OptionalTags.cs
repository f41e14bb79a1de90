namespace SensorProfile.Raw.Containers;

/// <summary>Tags that a frame can be read without: what is wrong with them becomes a warning.</summary>
internal static class OptionalTags
{
    /// <summary>Reads a tag, or takes a substitute and notes why.</summary>
    /// <typeparam name="T">Type of the value.</typeparam>
    /// <param name="directory">Where the tag stands; null gives the substitute.</param>
    /// <param name="tag">The tag.</param>
    /// <param name="warnings">Takes the warning.</param>
    /// <param name="read">Reads it.</param>
    /// <param name="substitute">What is taken when the tag cannot be read.</param>
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

    /// <summary>The warning that a tag was passed over.</summary>
    public static RawWarning Passed(TiffDirectory directory, Tag tag, string problem) =>
        new(RawWarningCodes.MeaninglessTag, directory.Location(tag), problem + " The tag was passed over.");
}
