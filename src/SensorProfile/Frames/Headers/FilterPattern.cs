namespace SensorProfile.Frames.Headers;

/// <summary>The colour filter array in file order.</summary>
internal static class FilterPattern
{
    /// <summary>
    /// Reads BAYERPAT, or else COLORTYP when it holds a pattern, with XBAYROFF, YBAYROFF and ROWORDER.
    /// </summary>
    /// <remarks>
    /// The header's pattern p describes the image from its upper left corner, displaced by the offsets: image pixel
    /// (row, column) lies under p[(row + YBAYROFF) mod 2][(column + XBAYROFF) mod 2]. With ROWORDER 'BOTTOM-UP' the
    /// file starts with the image's last row, so file row r is image row height − 1 − r; with 'TOP-DOWN' or without
    /// ROWORDER it starts with the top row.
    /// </remarks>
    /// <returns>Four letters: file rows 0 and 1, columns 0 and 1 of each; null for monochrome or an invalid
    /// pattern.</returns>
    public static string? Read(KeywordValues header, int height, List<HeaderIssue> issues)
    {
        string? bayer = header.Text("BAYERPAT"),
            colour = header.Text("COLORTYP");
        string? pattern = Pattern(bayer) ?? Pattern(colour);
        if (pattern is null)
        {
            if (bayer is not null && !MeansMonochrome(bayer))
                issues.Add(new HeaderIssue(FindingCodes.ColourFilterUnreadable, $"BAYERPAT = '{bayer}'"));
            return null;
        }
        int x = Offset(header, "XBAYROFF", issues),
            y = Offset(header, "YBAYROFF", issues);
        string? order = header.Text("ROWORDER")?.ToUpperInvariant().Replace('_', '-');
        if (order is not (null or "TOP-DOWN" or "BOTTOM-UP"))
            issues.Add(new HeaderIssue(FindingCodes.RowOrderUnknown, $"ROWORDER = '{order}'"));
        return InFileOrder(pattern, x, y, bottomUp: order == "BOTTOM-UP", height);
    }

    /// <summary>The same rule for plain values, for tests and for patterns from other sources.</summary>
    public static string InFileOrder(string pattern, int xOffset, int yOffset, bool bottomUp, int height)
    {
        Span<char> result = stackalloc char[4];
        for (int i = 0; i < 4; i++)
        {
            int row = i / 2,
                column = i % 2;
            int pictureRow = bottomUp ? height - 1 - row : row;
            result[i] = pattern[Parity(pictureRow + yOffset) * 2 + Parity(column + xOffset)];
        }
        return new string(result);
    }

    private static int Parity(int value) => value & 1; // also right for negative numbers

    private static int Offset(KeywordValues header, string keyword, List<HeaderIssue> issues) =>
        header.Number(issues, null, keyword) is { } offset && Math.Abs(offset.Value) < 1e6
            ? (int)Math.Round(offset.Value)
            : 0;

    /// <summary>A valid pattern has two rows of two among R, G, B, all three present: RGGB, BGGR, GRBG, GBRG.</summary>
    private static string? Pattern(string? text)
    {
        string letters = (text ?? "").ToUpperInvariant().Replace(" ", "", StringComparison.Ordinal);
        return letters is "RGGB" or "BGGR" or "GRBG" or "GBRG" ? letters : null;
    }

    private static bool MeansMonochrome(string text) =>
        text.ToUpperInvariant() is "NONE" or "MONO" or "MONOCHROME" or "NO" or "F" or "FALSE" or "0";
}
