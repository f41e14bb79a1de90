using SensorProfile.Cli.Tests.Running;

namespace SensorProfile.Cli.Tests;

/// <summary>The demo, run once as a process of its own, on the day after the demo's night.</summary>
public sealed class DemoNight : IDisposable
{
    /// <summary>The name of the tests that share it, which run one after another.</summary>
    public const string Shared = "demo";
    private const string DayAfter = "1949904000"; // 2031-10-16 08:00 UTC

    public DemoNight()
    {
        SensorProfileCommand command = Folder.Command with
        {
            OnItsOwn = true,
            Environment = new Dictionary<string, string?> { ["SOURCE_DATE_EPOCH"] = DayAfter },
        };
        Run = command.Run("demo").Expect(ExitCodes.Answered);
        Files = Directory
            .GetFiles(Folder["sensorprofile-demo"])
            .ToDictionary(file => Path.GetFileName(file), File.ReadAllBytes);
    }

    /// <summary>The files beside the profile as the demo left them, before any test touched them.</summary>
    internal IReadOnlyDictionary<string, byte[]> Files { get; }

    internal TemporaryFolder Folder { get; } = new();

    internal CommandRun Run { get; }

    public void Dispose() => Folder.Dispose();
}

[CollectionDefinition(DemoNight.Shared)]
public sealed class DemoTestsOfOneNight : ICollectionFixture<DemoNight>;
