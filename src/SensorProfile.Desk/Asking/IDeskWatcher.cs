namespace SensorProfile.Desk.Asking;

/// <summary>Receives the progress of lengthy work; called from any thread.</summary>
internal interface IDeskWatcher
{
    /// <summary>A stage has progressed.</summary>
    void Heard(DeskProgress progress);

    /// <summary>Something noticed on the way, such as a file left out.</summary>
    void Heard(string note);
}

/// <summary>How far a stage has come.</summary>
/// <param name="Stage">What is being done, for people.</param>
/// <param name="Done">Frames done.</param>
/// <param name="Total">Frames in all; 0 when that is not known.</param>
/// <param name="Speed">"212 MB/s"; empty when it is not known.</param>
/// <param name="Left">"40 s left"; empty when it is not known.</param>
internal sealed record DeskProgress(string Stage, int Done, int Total, string Speed, string Left);
