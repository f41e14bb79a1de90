namespace SensorProfile.Profiles.Session;

/// <summary>The camera as its frames show it.</summary>
public sealed record CameraInfo
{
    /// <summary>Name as the headers give it; "unnamed camera" when they give none.</summary>
    public string Name { get; init; } = "unnamed camera";

    /// <summary>Frame width, px.</summary>
    public int Width { get; init; }

    /// <summary>Frame height, px.</summary>
    public int Height { get; init; }

    /// <summary>Colour filter array such as "RGGB", first row of the file first; null for monochrome.</summary>
    public string? ColourFilter { get; init; }

    /// <summary>Bits of a stored sample as the frames use them (for example 16).</summary>
    public int StoredBits { get; init; }

    /// <summary>
    /// ADU between two usable codes: 1, 2, 4, 16 …; more than 1 when the camera shifts its codes to the left.
    /// </summary>
    public int CodeStep { get; init; } = 1;
}
