using SensorProfile.Characterisation;
using SensorProfile.Fits;
using SensorProfile.Profiles;

namespace SensorProfile.Reporting.Maps;

/// <summary>The per-pixel maps of a characterisation as FITS images of the frame's own size and orientation, float32, not measured = NaN.</summary>
public static class MapFiles
{
    /// <summary>Writes <c>maps/*.fits</c>, with several modes <c>maps/&lt;mode&gt;/*.fits</c>, into a folder.</summary>
    /// <param name="profile">The profile that the maps belong to.</param>
    /// <param name="maps">One entry per mode of the profile.</param>
    /// <param name="folder">Folder of the profile.</param>
    /// <param name="ct">Stops between two maps.</param>
    /// <exception cref="IOException">The disk is full or the folder cannot be written.</exception>
    public static void Write(CameraProfile profile, IReadOnlyList<ModeMaps> maps, string folder, CancellationToken ct = default)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(maps);
        for (int mode = 0; mode < maps.Count; mode++)
        {
            string place = Path.Combine(folder, MapFolders.Of(profile)[mode]);
            foreach (MapKind kind in MapKind.All)
            {
                ct.ThrowIfCancellationRequested();
                if (kind.Values(maps[mode]) is not { } values) continue;
                Directory.CreateDirectory(place);
                FitsWriter.Write(Path.Combine(place, kind.File), new FitsImage<float>(maps[mode].Width, maps[mode].Height, values, MapCards.Of(kind, profile, mode)));
            }
            if (maps[mode].Defects is { } classes)
            {
                Directory.CreateDirectory(place);
                FitsWriter.Write(Path.Combine(place, "defects.fits"), new FitsImage<byte>(maps[mode].Width, maps[mode].Height, classes, MapCards.OfDefects(profile, mode)));
            }
        }
    }
}
