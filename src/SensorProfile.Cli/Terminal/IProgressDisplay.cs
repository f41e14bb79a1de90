namespace SensorProfile.Cli.Terminal;

/// <summary>Shows the progress of lengthy work. May be called from several threads.</summary>
internal interface IProgressDisplay
{
    /// <param name="stage">What is being done, for people: "reading headers".</param>
    /// <param name="done">Frames (or files) done in this stage.</param>
    /// <param name="total">Frames in all; 0 when that is not known.</param>
    /// <param name="bytes">Bytes read since the work began; 0 when not counted.</param>
    void Show(string stage, int done, int total, long bytes);
}
