namespace SensorProfile.Simulation.Sensors;

/// <summary>Colours of the filter array.</summary>
internal static class ColourFilter
{
    /// <summary>Colour 'R', 'G' or 'B' of a pixel (0-based); 'G' on a monochrome sensor.</summary>
    public static char At(CameraDescription camera, int column, int row) =>
        camera.ColourFilter is { } pattern ? pattern[(row & 1) * 2 + (column & 1)] : 'G';

    /// <summary>Transmission of the pixel's filter; 1 on a monochrome sensor.</summary>
    public static double Light(CameraDescription camera, int column, int row) =>
        camera.ColourFilter is null
            ? 1
            : At(camera, column, row) switch
            {
                'R' => camera.ColourResponse.Red,
                'B' => camera.ColourResponse.Blue,
                _ => camera.ColourResponse.Green,
            };

    /// <summary>Digital factor on the pixel's codes; 1 on a monochrome sensor.</summary>
    public static double Scale(CameraDescription camera, int column, int row) =>
        camera.ColourFilter is null
            ? 1
            : At(camera, column, row) switch
            {
                'R' => camera.InCamera.ScaleRed,
                'B' => camera.InCamera.ScaleBlue,
                _ => camera.InCamera.ScaleGreen,
            };
}
