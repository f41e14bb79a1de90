using SensorProfile.Profiles.Session;

namespace SensorProfile.Characterisation;

/// <summary>
/// Order of the modes in a profile: by binning, gain, ISO, offset, read-out; missing settings come first.
/// </summary>
internal sealed class ModeOrder : IComparer<ModeSettings>
{
    public static ModeOrder ByGainThenOffset { get; } = new();

    public int Compare(ModeSettings? x, ModeSettings? y)
    {
        int order = string.CompareOrdinal(x?.Binning, y?.Binning);
        if (order == 0)
            order = Nullable.Compare(x?.Gain, y?.Gain);
        if (order == 0)
            order = Nullable.Compare(x?.Iso, y?.Iso);
        if (order == 0)
            order = Nullable.Compare(x?.Offset, y?.Offset);
        return order != 0 ? order : string.CompareOrdinal(x?.Readout, y?.Readout);
    }
}
