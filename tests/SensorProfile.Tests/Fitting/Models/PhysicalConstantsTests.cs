using SensorProfile.Fitting.Models;

namespace SensorProfile.Tests.Fitting.Models;

/// <summary>Row C-2: CODATA 2018.</summary>
public class PhysicalConstantsTests
{
    [Fact]
    public void BoltzmannConstant() =>
        Digits.Relative(8.617333262145177e-5, PhysicalConstants.BoltzmannElectronVoltsPerKelvin, 2.3e-16);
}
