using System.Globalization;
using SensorProfile.NoiseModel;
using SensorProfile.NoiseModel.Camera;
using SensorProfile.NoiseModel.Noise;
using SensorProfile.NoiseModel.Sky;
using Xunit.Abstractions;

namespace SensorProfile.Tests.Decisions;

/// <summary>
/// The loss that the noise budget predicts against the loss of simulated stacks, over the whole product of conditions;
/// the table stands in the test's output.
/// </summary>
/// <remarks>
/// Limit: 10 % of the simulated loss, and 3 standard errors of the simulation (see <see cref="StackMonteCarlo"/>), plus
/// 0.01 % for losses that no one could see. The camera's hot pixels go up to 2 e-/px/s, 100 times
/// the typical pixel, with as many in each decade: its moments are finite, and a few thousand places hold enough of
/// them. 0.25 % and 1 % of 4000 places are 10 and 40 hot pixels per position of the dither.
/// </remarks>
public class BudgetGridTests(ITestOutputHelper output)
{
    private static readonly Tarn cooled = new()
    {
        HotPower = 0.7,
        HotTo = 2,
        Rate = 0.02,
        HotFrom = 0.1,
        LogSpread = 0.3,
    };

    [Fact]
    public void PlainStacksLoseWhatTheBudgetPredicts() =>
        Check(
            4000,
            from offset in new[] { -10.0, -5, -2, 0, 2, 5, 10 }
            from factor in new[] { 0.8, 1, 1.25 }
            from exposure in new[] { 30.0, 120, 600 }
            from stack in new[] { (1, 1), (5, 1), (5, 5), (20, 1), (20, 20), (100, 1), (100, 20) }
            from share in new[] { 0, 0.0025, 0.01 }
            select new GridPoint(
                cooled with
                {
                    HotShare = share,
                },
                offset,
                factor,
                exposure,
                stack.Item1,
                stack.Item2,
                Rejects: false
            )
        );

    [Fact] // dithered over as many positions as there are lights, over a few, and not at all
    public void StacksThatRejectLoseWhatTheBudgetPredicts() =>
        Check(
            8000,
            from offset in new[] { -10.0, -3, 0, 3, 10 }
            from stack in new[] { (5, 1), (5, 5), (10, 3), (10, 10), (20, 5), (20, 20), (40, 1), (60, 12), (60, 60) }
            from share in new[] { 0, 0.0025, 0.01 }
            select new GridPoint(
                cooled with
                {
                    HotShare = share,
                },
                offset,
                1,
                300,
                stack.Item1,
                stack.Item2,
                Rejects: true
            )
        );

    // 25 and 30 °C: the dark current of the typical pixel is 1.1 and 2 e-/px/s, of the fastest 64 and 105; 15 000 e-
    // are reached by hot pixels within 120 s
    [Fact]
    public void AnUncooledCameraWithFullPixelsLosesWhatTheBudgetPredicts() =>
        Check(
            12000,
            from celsius in new[] { 20.0, 30 }
            from offset in new[] { -5.0, -1, 0, 2 }
            from exposure in new[] { 60.0, 240 }
            from stack in new[] { (1, 1), (40, 1), (40, 20) }
            from share in new[] { 0, 0.0025, 0.01 }
            select new GridPoint(
                cooled with
                {
                    HotShare = share,
                    Well = 15000,
                },
                offset,
                1,
                exposure,
                stack.Item1,
                stack.Item2,
                Rejects: false
            )
            {
                Celsius = celsius,
            }
        );

    private void Check(int places, IEnumerable<GridPoint> grid)
    {
        GridPoint[] points = [.. grid];
        var results = new GridPoint.Result[points.Length];
        Parallel.For(0, points.Length, i => results[i] = points[i].Run(places, 1000 + i));
        foreach ((GridPoint point, GridPoint.Result result) in points.Zip(results))
            output.WriteLine($"{point.Words} {result.Words}");
        Assert.All(points.Zip(results), pair =>
            Assert.True(pair.Second.Agrees, $"{pair.First.Words} {pair.Second.Words}")
        );
    }

    internal sealed record GridPoint(
        Tarn Camera,
        double Offset,
        double Factor,
        double Exposure,
        int Lights,
        int Positions,
        bool Rejects
    )
    {
        public double Celsius { get; init; } = Tarn.Reference;

        public string Words =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Celsius, 3} °C {Exposure, 3} s  darks {Offset, 3:+0;-0;0} °C ×{Factor:F2}  {Lights, 3} lights "
                    + $"{Positions, 2} positions{(Rejects ? " rejects" : "")}  hot {100 * Camera.HotShare:F2} %"
            );

        public Result Run(int places, int seed)
        {
            var stack = new StackConditions
            {
                Sky = SkyRate.Given(0.5).Rate,
                ExposureSeconds = Exposure,
                TemperatureCelsius = Celsius,
                Lights = Lights,
                DitherPositions = Positions,
                Rejection = Rejects ? Rejection.SigmaClip : Rejection.None,
            };
            var darks = new DarkFrames
            {
                ExposureSeconds = Exposure * Factor,
                TemperatureCelsius = Celsius + Offset,
                Frames = 20,
            };
            SensorModel sensor = SensorReader.Of(Camera.Profile(), Camera.Mode()).Best;
            double real = Math.Sqrt(StackNoise.Compute(sensor, stack, 0.5, darks).AllPixels!.Value),
                ideal = Math.Sqrt(StackNoise.Compute(sensor, stack, 0.5, null).AllPixels!.Value);
            (double loss, double error, _, double noise) = new StackMonteCarlo(
                Camera,
                stack,
                darks,
                places,
                seed
            ).Run();
            return new Result(real / ideal - 1, loss, error, real / noise);
        }

        /// <param name="Predicted">Loss by the budget.</param>
        /// <param name="Simulated">Loss by the simulation.</param>
        /// <param name="Error">Standard error of the latter.</param>
        /// <param name="Noise">Noise of the stack, predicted over simulated.</param>
        internal sealed record Result(double Predicted, double Simulated, double Error, double Noise)
        {
            public bool Agrees =>
                Math.Abs(Predicted - Simulated) <= 0.1 * Simulated + 3 * Error + 1e-4
                && Math.Abs(Noise - 1) <= 0.1 + 3 * Error / (1 + Simulated);

            public string Words =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"loss predicted {100 * Predicted, 8:F3} %, simulated {100 * Simulated, 8:F3} ± {100 * Error:F3} "
                        + $"%; noise {Noise:F3}{(Agrees ? "" : "  DISAGREES")}"
                );
        }
    }
}
