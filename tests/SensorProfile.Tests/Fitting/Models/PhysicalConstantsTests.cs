using SensorProfile.Fitting.Models;

namespace SensorProfile.Tests.Fitting.Models;

/// <summary>Constants of CODATA 2018, as NIST lists them.</summary>
public class PhysicalConstantsTests
{
    [Fact]
    public void BoltzmannConstant() =>
        Digits.Relative(8.617333262145177e-5, PhysicalConstants.BoltzmannElectronVoltsPerKelvin, 2.3e-16);
}
