namespace SensorProfile.Profiles.Files;

/// <summary>What keeps a JSON text from being read.</summary>
/// <param name="Place">For example <c>$.modes[0].gain</c>; null when the text as a whole is not JSON.</param>
/// <param name="Line">Line, counted from 1; null when it is not known.</param>
/// <param name="Problem">What was found, as a sentence.</param>
internal sealed record JsonFault(string? Place, long? Line, string Problem);
