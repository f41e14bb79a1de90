using System.Globalization;
using SensorProfile.Simulation.Parameters.Physics;

namespace SensorProfile.Simulation.Parameters;

/// <summary>Checks the parameters of a sensor's own physics.</summary>
/// <param name="within">Raises an error with place, value and limits when a value is out of range.</param>
internal sealed class PhysicsCheck(Action<string, double?, double, double> within)
{
    /// <summary>Checks all parameters.</summary>
    public void Check(SensorPhysics physics)
    {
        for (int i = 0; i < physics.Defects.Count; i++)
        {
            Defects(string.Create(CultureInfo.InvariantCulture, $"physics.defects[{i}]"), physics.Defects[i]);
        }
        for (int i = 0; i < physics.SwitchingTraps.Count; i++)
        {
            Traps(
                string.Create(CultureInfo.InvariantCulture, $"physics.switchingTraps[{i}]"),
                physics.SwitchingTraps[i]
            );
        }
        within("physics.persistence.share", physics.Persistence?.Share, 0, 1);
        within("physics.persistence.decay", physics.Persistence?.Decay, 0.1, 1e6);
        within("physics.gradientAcross", physics.GradientAcross, -50, 50);
        within("physics.gradientDown", physics.GradientDown, -50, 50);
        within("physics.lightLeak", physics.LightLeak, 0, 1e6);
    }

    private void Defects(string at, DefectPopulation law)
    {
        within($"{at}.share", law.Share, 0, 1);
        within($"{at}.rate", law.Rate, 1e-9, 1e7);
        within($"{at}.slope", law.Slope, 0.05, 20);
        within($"{at}.spread", law.Spread, 0, 5);
        within($"{at}.maximum", law.Maximum, law.Rate, 1e7);
        within($"{at}.energy", law.Energy, 0, 3);
        within($"{at}.energySpread", law.EnergySpread, 0, 1);
        within($"{at}.energyMinimum", law.EnergyMinimum, 0, 3);
        within($"{at}.energyMaximum", law.EnergyMaximum, law.EnergyMinimum, 3);
        within($"{at}.diffusionShare", law.DiffusionShare, 0, 1);
    }

    private void Traps(string at, SwitchingTraps law)
    {
        within($"{at}.share", law.Share, 0, 1);
        within($"{at}.step", law.Step, 0, 1e6);
        within($"{at}.rateStep", law.RateStep, 0, 1e6);
        within($"{at}.rateEnergy", law.RateEnergy, 0, 3);
        within($"{at}.dwellHigh", law.DwellHigh, 0.01, 1e7);
        within($"{at}.dwellLow", law.DwellLow, 0.01, 1e7);
        within($"{at}.dwellSpread", law.DwellSpread, 0, 3);
        within($"{at}.dwellEnergy", law.DwellEnergy, 0, 3);
    }
}
