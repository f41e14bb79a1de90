namespace SensorProfile.Reporting.Handbook;

/// <summary>A page of the handbook.</summary>
/// <param name="Name">As it is asked for: "frames".</param>
/// <param name="Title">Its heading.</param>
/// <param name="Markdown">All of it, with what the program itself adds.</param>
internal sealed record HandbookTopic(string Name, string Title, string Markdown);
