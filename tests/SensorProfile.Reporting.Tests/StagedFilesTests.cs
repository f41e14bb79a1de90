namespace SensorProfile.Reporting.Tests;

public sealed class StagedFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("staging-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void WhenOneFileFailsTheOldOnesStillStandAndTheErrorSaysWhatToDo()
    {
        File.WriteAllText(Path.Combine(_folder, "a"), "old");
        var files = new Dictionary<string, Action<Stream>>
        {
            ["a"] = stream => stream.WriteByte(1),
            ["b/c"] = _ => throw new IOException("No space left on device."),
        };

        IOException problem = Assert.Throws<IOException>(() => StagedFiles.Write(_folder, files));

        Assert.Equal(
            $"{_folder}: the report cannot be written (No space left on device). Free some space or choose another "
                + "folder.",
            problem.Message
        );
        Assert.Equal("old", File.ReadAllText(Path.Combine(_folder, "a")));
        Assert.Equal(["a"], Directory.GetFileSystemEntries(_folder).Select(Path.GetFileName));
    }
}
