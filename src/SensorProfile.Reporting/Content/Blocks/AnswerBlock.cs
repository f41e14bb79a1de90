namespace SensorProfile.Reporting.Content.Blocks;

/// <summary>The sentence that a person can act on.</summary>
/// <param name="Verdict">Keep, keep with care, or cannot tell.</param>
/// <param name="Sentence">The numbers in one sentence.</param>
/// <param name="Reason">What is missing or needs attention, in one sentence.</param>
internal sealed record AnswerBlock(Verdict Verdict, string Sentence, string Reason) : Block;
