namespace SensorProfile.Profiles.Pattern;

/// <summary>Pixels that jump between two or three levels by about the same amount.</summary>
/// <param name="Thermal">True when the step grows with exposure and temperature as dark signal does, false when it is
/// the same in every frame.</param>
/// <param name="Pixels">Pixels in the class.</param>
/// <param name="Deviation">Root mean square over the pixels of the scatter that the levels add to a frame, step·√(f(1 −
/// f)) for a share f of the time in the upper level: e-, or e-/px/s at the reference temperature when thermal.</param>
/// <param name="MemorySeconds">Median correlation time τ of their states, 1/τ = 1/(time in the upper) + 1/(time in the
/// lower level), s; null when no frames of theirs can tell.</param>
public sealed record FlickerClass(bool Thermal, long Pixels, Measurement Deviation, double? MemorySeconds);
