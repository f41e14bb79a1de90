namespace SensorProfile.Tests.HouseRules;

/// <summary>The rooms of the library in their order: a room may use only rooms that stand before it.</summary>
/// <remarks>
/// A room with rooms inside is either the base of these (it stands before them) or what is built from them (after). A
/// new
/// room is a line here; <c>RoomArrowsTests</c> says where it may stand.
/// </remarks>
internal static class RoomOrder
{
    public static readonly IReadOnlyList<string> Rooms =
    [
        HouseRules.Rooms.Root,
        "Fitting/Statistics",
        "Fitting/Models",
        "Profiles/Darks",
        "Profiles/Pattern",
        "Profiles/Response",
        "Profiles/Session",
        "Profiles",
        "Profiles/Files",
        "Frames",
        "Frames/Headers",
        "Frames/Capture",
        "Frames/Sets",
        "Frames/Survey",
        "Pixels",
        "Pixels/Strips",
        "Pixels/Sums",
        "Pixels/Pairs",
        "PhotonTransfer",
        "Screening",
        "PhotonTransfer/Channels",
        "DarkCurrent/Laws",
        "DarkCurrent/Levels",
        "DarkCurrent/Results",
        "FixedPattern/BlackLevel",
        "FixedPattern/Cells",
        "FixedPattern/Input",
        "FixedPattern/RowsAndColumns",
        "FixedPattern/Telegraph",
        "FixedPattern/DarkRates",
        "FixedPattern/Defects",
        "FixedPattern/Glow",
        "FixedPattern/Thermometer",
        "FixedPattern",
        "Prediction",
        "RawCheck",
        "Characterisation/Maps",
        "Characterisation/Summaries",
        "Characterisation",
        "NoiseModel",
        "NoiseModel/Camera",
        "NoiseModel/Answers",
        "NoiseModel/Sky",
        "NoiseModel/Noise",
        "Decisions/ComputedDarks",
        "Decisions/DarkCount",
        "Decisions/Exposure",
        "Decisions/Setpoint",
        "Decisions/Settling",
        "Decisions/Shots",
        "Decisions/Tolerance",
        "Decisions/DarkMatch",
        "Decisions/DarkPlan",
        "Drift/Archive",
        "Drift/Identity",
        "Drift",
        "Drift/Patches",
        "Drift/HotPixelMatching",
        "Drift/MasterDarks",
        "Drift/OverTheYears",
    ];
}
