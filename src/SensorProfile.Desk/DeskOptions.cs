namespace SensorProfile.Desk;

/// <summary>How a desk is opened.</summary>
internal sealed record DeskOptions
{
    /// <summary>Frames, results or an archive to start with; null to start with nothing.</summary>
    public string? Folder { get; init; }

    /// <summary>The port; 0 takes a free one.</summary>
    public int Port { get; init; }

    /// <summary>How long the desk stays after its last window was closed.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>The clock.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;
}
