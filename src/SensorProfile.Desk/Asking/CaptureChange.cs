namespace SensorProfile.Desk.Asking;

/// <summary>A person's correction of frames whose headers are silent or wrong.</summary>
/// <param name="Folder">The frames.</param>
/// <param name="Table">The capture table: made when it is missing, changed when it is there.</param>
/// <param name="NamesSay">Whether names of files and folders were believed.</param>
/// <param name="Files">The frames concerned, as the survey names them.</param>
/// <param name="Kind">Their kind; null leaves it.</param>
/// <param name="TemperatureCelsius">Sensor temperature, °C; null leaves it.</param>
/// <param name="ExposureSeconds">Exposure, s; null leaves it.</param>
/// <param name="Use">Whether they are used; null leaves it.</param>
internal sealed record CaptureChange(
    string Folder,
    string Table,
    bool NamesSay,
    IReadOnlyList<string> Files,
    string? Kind,
    double? TemperatureCelsius,
    double? ExposureSeconds,
    bool? Use
);
