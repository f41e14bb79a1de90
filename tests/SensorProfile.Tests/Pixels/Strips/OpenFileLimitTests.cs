using SensorProfile.Pixels.Strips;

namespace SensorProfile.Tests.Pixels.Strips;

public sealed class OpenFileLimitTests
{
    [Theory]
    [InlineData(null, 400)]
    [InlineData(1_048_576L, 400)]
    [InlineData(1024L, 400)]
    [InlineData(256L, 64)]
    [InlineData(128L, 0)]
    [InlineData(64L, 0)]
    public void LittleRoomKeepsFewFramesOpen(long? limit, int frames) =>
        Assert.Equal(frames, OpenFileLimit.FramesWithin(limit));
}
