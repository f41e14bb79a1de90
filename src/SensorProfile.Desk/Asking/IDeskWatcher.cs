namespace SensorProfile.Desk.Asking;

/// <summary>Hears how far lengthy work has come; called from any thread.</summary>
internal interface IDeskWatcher
{
    /// <summary>A stage goes on.</summary>
    void Heard(DeskProgress progress);

    /// <summary>Something that was noticed on the way: a file left out.</summary>
    void Heard(string note);
}

/// <summary>How far a stage has come.</summary>
/// <param name="Stage">What is being done, for people.</param>
/// <param name="Done">Frames done.</param>
/// <param name="Total">All of them; 0 when that is not known.</param>
/// <param name="Speed">"212 MB/s"; empty when it is not known.</param>
/// <param name="Left">"40 s left"; empty when it is not known.</param>
internal sealed record DeskProgress(string Stage, int Done, int Total, string Speed, string Left);
