using System.Text;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Writing;

/// <summary>
/// Puts wrong values into the header of a finished file, byte by byte, because a proper writer refuses to write them.
/// </summary>
internal static class HeaderFaults
{
    private const int CardBytes = 80;
    private const int ValueColumn = 10;

    /// <summary>
    /// Replaces the values of keywords in place and blanks the checksums, which would no longer match.
    /// </summary>
    /// <exception cref="CameraDescriptionException">The frame does not have one of the keywords.</exception>
    public static void Apply(Fault fault, byte[] file)
    {
        foreach ((string keyword, string value) in fault.ReplaceKeywords)
        {
            int card = Find(keyword, file);
            if (card < 0)
            {
                throw new CameraDescriptionException(
                    "camera description",
                    "$.faults",
                    $"the frame carries no keyword {keyword} to replace.",
                    "Name one that it carries."
                );
            }
            string text = $"{keyword, -8}= {value, 20}".PadRight(CardBytes);
            Encoding.ASCII.GetBytes(text.AsSpan(0, CardBytes), file.AsSpan(card, CardBytes));
        }
        if (fault.ReplaceKeywords.Count > 0)
        {
            Blank("CHECKSUM", file);
            Blank("DATASUM", file);
        }
    }

    private static void Blank(string keyword, byte[] file)
    {
        int card = Find(keyword, file);
        if (card >= 0)
        {
            file.AsSpan(card, CardBytes).Fill((byte)' ');
        }
    }

    private static int Find(string keyword, byte[] file)
    {
        byte[] wanted = Encoding.ASCII.GetBytes($"{keyword, -8}");
        byte[] end = Encoding.ASCII.GetBytes("END     ");
        for (int card = 0; card + CardBytes <= file.Length; card += CardBytes)
        {
            ReadOnlySpan<byte> name = file.AsSpan(card, ValueColumn - 2);
            if (name.SequenceEqual(wanted))
            {
                return card;
            }
            if (name.SequenceEqual(end))
            {
                break;
            }
        }
        return -1;
    }
}
