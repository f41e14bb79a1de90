using SensorProfile.NoiseModel.Noise;

namespace SensorProfile.Tests.NoiseModel.Noise;

public class SumGridTests
{
    private const int Half = 48;

    private static SumGrid Of(params (double Place, double Weight)[] values)
    {
        var grid = new SumGrid(Half);
        foreach ((double place, double weight) in values)
            grid.Add(place, weight);
        return grid;
    }

    private static SumGrid Sum(SumGrid one, SumGrid other)
    {
        var sum = new SumGrid(Half);
        sum.SetToSum(one, other);
        return sum;
    }

    [Fact] // 0.7·0.6 lies at 3 + 5, 0.7·0.4 at 3 − 20, 0.3·0.6 at −10 + 5, 0.3·0.4 at −10 − 20
    public void ASumIsThatOfAllPairs()
    {
        SumGrid sum = Sum(Of((3, 0.7), (-10, 0.3)), Of((5, 0.6), (-20, 0.4)));
        Assert.Equal(0.18, sum.Within(7), 12);
        Assert.Equal(0.18 + 0.42 / 2, sum.Within(8), 12); // a cell at the distance counts by half
        Assert.Equal(0.18 + 0.42 + 0.28, sum.Within(20), 12);
        Assert.Equal(1, sum.Within(40), 12);
    }

    [Fact] // between two cells a value is shared, so that the mean stays: at 2.25 a quarter lies in cell 3
    public void AValueBetweenCellsIsShared()
    {
        SumGrid grid = Of((2.25, 1));
        Assert.Equal(0.75 / 2, grid.Within(2), 12);
        Assert.Equal(0.75 + 0.25 / 2, grid.Within(3), 12);
    }

    [Fact]
    public void WhatLeavesTheGridIsMissing()
    {
        Assert.Equal(0.5, Sum(Of((30, 0.5), (0, 0.5)), Of((30, 1))).Within(40), 12);
        Assert.Equal(0, Of((60, 1)).Within(40), 12);
        Assert.Equal(0, Sum(Of((60, 1)), Of((0, 1))).Within(40), 12);
    }

    /// <summary>The short way to the share within, without the sum itself, is that of the sum.</summary>
    [Fact]
    public void WhatStaysWithinBesideEachValueIsThatOfTheSum()
    {
        var random = new Random(5);
        SumGrid one = Of([.. Enumerable.Range(0, 20).Select(_ => (60 * random.NextDouble() - 30, 0.05))]),
            other = Of([.. Enumerable.Range(0, 15).Select(_ => (30 * random.NextDouble() - 10, 1 / 15.0))]);
        double[] beside = new double[2 * Half + 1];
        one.WithinBeside(32, beside);
        Assert.Equal(Sum(one, other).Within(32), other.Mean(beside), 12);
    }

    [Fact]
    public void AClearedGridIsEmpty()
    {
        SumGrid grid = Of((5, 1));
        grid.SetTo(-7);
        Assert.Equal(1, grid.Within(8), 12);
        Assert.Equal(0, grid.Within(6), 12);
        grid.Clear();
        Assert.Equal(0, grid.Within(40), 12);
    }
}
