using SensorProfile.Profiles;

namespace SensorProfile.Characterisation.Maps;

/// <summary>What came out of a session's frames; <see cref="MapFiles.Write"/> writes its per-pixel maps.</summary>
public sealed record CharacterisationResult
{
    internal CharacterisationResult(CameraProfile profile, IReadOnlyList<ModeMaps> maps) =>
        (Profile, Maps) = (profile, maps);

    /// <summary>The camera profile.</summary>
    public CameraProfile Profile { get; internal init; }

    /// <summary>Per-pixel maps, one entry per mode of the profile and in its order.</summary>
    internal IReadOnlyList<ModeMaps> Maps { get; init; }
}
