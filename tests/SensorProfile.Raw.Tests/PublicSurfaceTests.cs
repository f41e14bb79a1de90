using SensorProfile.Tests.HouseRules;

namespace SensorProfile.Raw.Tests;

/// <summary>The public surface is committed: a new public member is a line in the review.</summary>
public sealed class PublicSurfaceTests
{
    [Fact]
    public void ThePublicSurfaceIsTheCommittedOne() => PublicSurface.AssertCommitted(typeof(RawFile).Assembly);
}
