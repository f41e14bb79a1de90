namespace SensorProfile.NoiseModel.Answers;

/// <summary>The numbers of an answer for one colour of a camera that scales its colours apart.</summary>
/// <param name="Colour">R, G1, G2 or B.</param>
/// <param name="Quantities">As those of <see cref="Answer.Quantities"/>.</param>
public sealed record ColourAnswer(string Colour, IReadOnlyDictionary<string, Measurement?> Quantities);
