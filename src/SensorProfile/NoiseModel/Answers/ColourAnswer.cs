namespace SensorProfile.NoiseModel.Answers;

/// <summary>The numbers of an answer for one colour of a camera that scales its colours separately.</summary>
/// <param name="Colour">R, G1, G2 or B.</param>
/// <param name="Quantities">Named as in <see cref="Answer.Quantities"/>.</param>
public sealed record ColourAnswer(string Colour, IReadOnlyDictionary<string, Measurement?> Quantities);
