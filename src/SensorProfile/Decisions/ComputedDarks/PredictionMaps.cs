using SensorProfile.Fits;
using SensorProfile.NoiseModel;
using SensorProfile.Profiles;
using static System.FormattableString;

namespace SensorProfile.Decisions.ComputedDarks;

/// <summary>The maps of a mode that a computed dark is made from, read a few rows at a time.</summary>
internal sealed class PredictionMaps : IDisposable
{
    private const double SameTemperature = 0.01;

    private static readonly string[] Endings = [".fits", ".fits.gz", ".fits.fz"];
    private static readonly string[] Needed =
        ["pedestal", "pedestal-uncertainty", "dark-rate", "dark-rate-uncertainty"],
        Useful = ["doubling", "doubling-uncertainty", "glow", "defects"];

    private readonly List<FitsFile> files = [];
    private readonly Dictionary<string, FitsHdu> images = [];

    private PredictionMaps(int width, int height) => (Width, Height) = (width, height);

    /// <summary>px.</summary>
    public int Width { get; }

    /// <summary>px.</summary>
    public int Height { get; }

    /// <summary>Opens the maps and checks that they are complete and belong to the profile.</summary>
    /// <exception cref="DecisionRefusedException">A map is missing, or belongs to another profile.</exception>
    /// <exception cref="IOException">A map is damaged; it is named.</exception>
    public static PredictionMaps Open(CameraProfile profile, ModeProfile mode, string folder)
    {
        int place = profile.Modes.TakeWhile(m => !ReferenceEquals(m, mode)).Count();
        string own =
            profile.Modes.Count > 1 && place < profile.Modes.Count
                ? Path.Combine(folder, ModeLabel.Folders(profile.Modes)[place])
                : folder;
        var maps = new PredictionMaps(profile.Camera.Width, profile.Camera.Height);
        try
        {
            foreach (string name in Needed.Concat(Useful))
                maps.Add(profile, mode, own, name);
            return maps;
        }
        catch
        {
            maps.Dispose();
            throw;
        }
    }

    /// <summary>Reads rows of a map; a missing map reads as not a number everywhere.</summary>
    public void Read(string name, int firstRow, Span<float> pixels)
    {
        if (images.TryGetValue(name, out FitsHdu? image))
            image.ReadRows(firstRow, pixels);
        else
            pixels.Fill(float.NaN);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (FitsFile file in files)
            file.Dispose();
    }

    private void Add(CameraProfile profile, ModeProfile mode, string folder, string name)
    {
        string? path = Endings.Select(end => Path.Combine(folder, name + end)).FirstOrDefault(File.Exists);
        if (path is null)
        {
            if (!Needed.Contains(name))
                return;
            throw Refuse.CannotTell(
                FindingCodes.MapsMissing,
                $"The map {name}.fits is not in {folder}, and no dark can be computed without it: keep the "
                    + "folder maps beside the profile, or characterise the frames again."
            );
        }
        FitsFile file = FitsFile.Open(path);
        files.Add(file);
        FitsHdu image = file.FirstImage
            ?? throw new IOException($"{path} holds no image; copy it again, or characterise the frames again.");
        if (!image.VerifyChecksum(out FitsWarning? problem))
            throw new IOException(
                $"{path} is damaged ({problem?.Message.TrimEnd('.')}): copy it again, or characterise the frames again."
            );
        Check(profile, mode, path, image);
        images[name] = image;
    }

    private void Check(CameraProfile profile, ModeProfile mode, string path, FitsHdu image)
    {
        if (image.Width != Width || image.Height != Height)
            throw Foreign(
                $"{path} is {Plain.Whole(image.Width)} × {Plain.Whole(image.Height)} px, the camera of the profile "
                    + $"{Plain.Whole(Width)} × {Plain.Whole(Height)} px"
            );
        if (image.Header.Text("INDIGEST") is { } digest && digest != profile.Frames.InputDigest)
            throw Foreign($"{path} was made from other frames than the profile");
        if (
            image.Header.Number("REFTEMP") is { } reference
            && mode.FixedPattern?.ReferenceTemperature is { } expected
            && Math.Abs(reference - expected) > SameTemperature
        )
            throw Foreign(Invariant($"{path} holds for {reference:0.##} °C, the profile for {expected:0.##} °C"));
    }

    private static DecisionRefusedException Foreign(string what) =>
        Refuse.CannotTell(
            FindingCodes.MapsOfAnotherProfile,
            $"{what}: give the profile with the maps that were written together with it."
        );
}
