using SensorProfile.Drift.Archive;
using SensorProfile.Drift.Identity;
using SensorProfile.Drift.OverTheYears;
using SensorProfile.Fits;
using SensorProfile.Profiles.Files;
using SensorProfile.Profiles.Session;
using SensorProfile.Tests.HouseRules;

namespace SensorProfile.Tests.Drift.Archive;

public sealed class ProfileArchiveTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("archive-").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    /// <summary>
    /// Profiles and lists of hot pixels as the first version of the schema wrote them: they must be read for ever.
    /// Never rewrite these files.
    /// </summary>
    [Fact]
    public void TheFirstVersionsFilesAreReadForEver()
    {
        string fixtures = Path.Combine(
            SourceTree.Root,
            "tests",
            "SensorProfile.Tests",
            "Drift",
            "Fixtures",
            "schema-1"
        );
        FoundProfiles found = ProfileArchive.Read([fixtures]);
        Assert.Empty(found.Refused);
        Assert.Equal([2031, 2032], found.Profiles.Select(p => p.DateUtc.Year));
        DriftAnswer answer = DriftComparison.Run(found.Profiles);
        Assert.DoesNotContain(answer.Findings, f => f.Code == "maps-refused");
        Assert.Equal(
            (0.012321, 5),
            (Math.Round(answer.Changes.Single(c => c.Quantity == "darkRate").From.Value, 6), answer.HotPixels!.New)
        );
        Assert.Equal(DriftVerdict.Changed, answer.Outcome);
    }

    /// <summary>
    /// The same with the maps of all pixels, as their first version was written. The values are those that this archive
    /// gave when it was made. Never rewrite these files.
    /// </summary>
    [Fact]
    public void TheFirstVersionsMapsAreReadForEver()
    {
        FoundProfiles found = ProfileArchive.Read([
            Path.Combine(SourceTree.Root, "tests", "SensorProfile.Tests", "Drift", "Fixtures", "schema-1-maps"),
        ]);
        Assert.Empty(found.Refused);
        Assert.All(found.Profiles, p => Assert.True(PixelRates.Read(p, 0).Rates!.HoldsOrdinary));
        DriftAnswer answer = DriftComparison.Run(found.Profiles);
        Assert.DoesNotContain(answer.Findings, f => f.Code == "maps-refused");
        DriftChange byPixel = answer.Changes.Single(c => c.Quantity == "darkRateByPixel");
        Assert.Equal(
            (0.03006, 0.03286, true),
            (Math.Round(byPixel.From.Value, 5), Math.Round(byPixel.To.Value, 5), byPixel.Changed)
        );
        Assert.Equal((114, 4), (answer.HotPixels!.New, answer.HotPixels.Healed));
    }

    [Fact]
    public void WhatIsKeptComesBackAndIsNeverReplaced()
    {
        ProfileOnDisk profile = WithMaps(
            "2031",
            new TarnYears { Width = 320, Height = 240 }.Measure(2031, new Random(1)),
            new SyntheticMaps().Measure(1)
        );
        string archive = Path.Combine(folder, "archive");
        (string kept, IReadOnlyList<Finding> findings) = SensorArchive.Keep(archive, profile);
        Assert.Empty(findings);
        Assert.EndsWith(Path.Combine("Tarn-9M", "2031-10-14"), kept, StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(kept, "maps", "hot-pixels.csv")).Length < 40_000);
        ProfileOnDisk again = Assert.Single(ProfileArchive.Read([archive]).Profiles);
        Assert.Equal(profile.DateUtc, again.DateUtc);
        PixelRates rates = PixelRates.Read(again, 0).Rates!,
            full = PixelRates.Read(profile, 0).Rates!;
        Assert.True(rates.HoldsOrdinary);
        // rounded to 2^-11 = 0.00049 at an uncertainty of 0.004
        Assert.All(Enumerable.Range(0, 320 * 240), i =>
            Assert.InRange(rates.At(i).Rate - full.At(i).Rate, -0.0003, 0.0003)
        );
        // so 24 million pixels stay below 50 MB a year
        Assert.True(new FileInfo(Path.Combine(kept, "maps", "ordinary-pixels.fits.gz")).Length < 2 * 320 * 240);
        SensorArchive.Keep(archive, profile); // the same once more: nothing to do
        ProfileOnDisk other = profile with
        {
            Profile = profile.Profile with { CreatedUtc = profile.Profile.CreatedUtc.AddDays(1) },
        };
        Assert.Contains(
            "an archive never replaces a file",
            Assert.Throws<IOException>(() => SensorArchive.Keep(archive, other)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AnArchiveOfArchivesIsComparedAgain()
    {
        string archive = Path.Combine(folder, "archive"),
            second = Path.Combine(folder, "second");
        Keep(archive);
        foreach (ProfileOnDisk profile in ProfileArchive.Read([archive]).Profiles)
            SensorArchive.Keep(second, profile);
        Assert.Equal(
            Directory.GetFiles(archive, "*", SearchOption.AllDirectories).Select(File.ReadAllText),
            Directory.GetFiles(second, "*", SearchOption.AllDirectories).Select(File.ReadAllText)
        );
    }

    [Fact]
    public void DamagedProfilesAreNamedAndTheRestIsCompared()
    {
        string archive = Path.Combine(folder, "archive");
        Keep(archive);
        Directory.CreateDirectory(Path.Combine(archive, "torn"));
        File.WriteAllText(Path.Combine(archive, "torn", "profile.json"), "{ \"schemaVersion\": 1, \"cam");
        FoundProfiles found = ProfileArchive.Read([archive]);
        Assert.Equal(2, found.Profiles.Count);
        Assert.Contains("not JSON", Assert.Single(found.Refused).Reason, StringComparison.Ordinal);
        DriftAnswer answer = DriftComparison.Run(found.Profiles, null, found.Refused);
        Assert.NotEmpty(answer.Changes);
        Assert.Contains(answer.Findings, f => f.Code == "profiles-refused");
    }

    [Theory]
    [InlineData("cut off")]
    [InlineData("foreign")]
    [InlineData("no notes")]
    [InlineData("map cut off")]
    [InlineData("foreign map")]
    public void DamagedListsOfHotPixelsAreNamedAndTheRestIsCompared(string how)
    {
        string archive = Path.Combine(folder, "archive");
        Keep(archive);
        string maps = Path.Combine(archive, "Tarn-9M", "2031-10-14", "maps"),
            list = Path.Combine(maps, "hot-pixels.csv"),
            notes = Path.Combine(maps, "hot-pixels.json"),
            map = Path.Combine(maps, "ordinary-pixels.fits.gz");
        if (how == "cut off")
            File.WriteAllText(list, File.ReadAllText(list)[..2000]);
        else if (how == "foreign")
            File.WriteAllText(
                notes,
                File.ReadAllText(notes).Replace("\"width\": 320", "\"width\": 640", StringComparison.Ordinal)
            );
        else if (how == "map cut off")
            File.WriteAllBytes(map, File.ReadAllBytes(map)[..20_000]);
        else if (how == "foreign map")
            FitsWriter.Write(map, new FitsImage<float>(2, 1, new float[2]), overwrite: true);
        else
            File.Delete(notes);
        DriftAnswer answer = DriftComparison.Run(ProfileArchive.Read([archive]).Profiles);
        Assert.Null(answer.HotPixels);
        Assert.NotEmpty(answer.Changes);
        Assert.Contains(answer.Findings, f => f.Code == "maps-refused");
    }

    [Fact]
    public void ADamagedMapIsNamedAndTheRestIsCompared()
    {
        var tarn = new TarnYears { Width = 320, Height = 240 };
        ProfileOnDisk then = WithMaps("2031", tarn.Measure(2031, new Random(1)), new SyntheticMaps().Measure(1)),
            now = WithMaps("2032", tarn.Measure(2032, new Random(2)), new SyntheticMaps().Measure(2));
        string map = Path.Combine(folder, "2032", "maps", "dark-rate.fits");
        File.WriteAllBytes(map, File.ReadAllBytes(map)[..50_000]);
        DriftAnswer answer = DriftComparison.Run([then, now]);
        Assert.Null(answer.HotPixels);
        Assert.NotEmpty(answer.Changes);
        Finding refused = Assert.Single(answer.Findings, f => f.Code == "maps-refused");
        Assert.Contains("dark-rate.fits", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// The next session is measured at the temperature of the last one, so that their maps need no step.
    /// </summary>
    [Fact]
    public void TheArchiveGivesTheTemperatureOfItsLastSession()
    {
        string archive = Path.Combine(folder, "archive");
        Assert.Null(ProfileArchive.ReferenceTemperature(archive, "Tarn-9M"));
        Keep(archive);
        Assert.Equal(-10, ProfileArchive.ReferenceTemperature(archive, "tarn-9m "));
        Assert.Null(ProfileArchive.ReferenceTemperature(archive, "Fell-24C"));
    }

    [Fact]
    public void AProfileNamedTwiceIsOne()
    {
        string one = Path.Combine(
            SourceTree.Root,
            "tests",
            "SensorProfile.Tests",
            "Drift",
            "Fixtures",
            "schema-1-maps"
        );
        string file = Directory.EnumerateFiles(one, "profile.json", SearchOption.AllDirectories).Order().First();
        FoundProfiles found = ProfileArchive.Read([file, Path.GetDirectoryName(file)!]);
        Assert.Single(found.Profiles);
        RejectedFile twice = Assert.Single(found.Refused);
        Assert.StartsWith("It is named twice", twice.Reason, StringComparison.Ordinal);
        // an archive and one of its sessions overlap without a fault
        Assert.Empty(ProfileArchive.Read([file, one]).Refused);
    }

    [Fact]
    public void AFolderWithoutProfilesIsNamed() =>
        Assert.Equal(
            "There is no profile.json in this folder or below it; give a folder that holds one.",
            Assert.Single(ProfileArchive.Read([folder]).Refused).Reason
        );

    private void Keep(string archive)
    {
        var tarn = new TarnYears { Width = 320, Height = 240 };
        for (int year = 0; year < 2; year++)
            SensorArchive.Keep(
                archive,
                WithMaps(
                    $"{2031 + year}",
                    tarn.Measure(2031 + year, new Random(year)),
                    new SyntheticMaps().Measure(1 + year)
                )
            );
    }

    private ProfileOnDisk WithMaps(string name, ProfileOnDisk profile, MapRates rates)
    {
        string home = Path.Combine(folder, name),
            maps = Path.Combine(home, "maps");
        Directory.CreateDirectory(maps);
        ProfileFile.Write(Path.Combine(home, "profile.json"), profile.Profile);
        int n = rates.Width * rates.Height;
        Write("dark-rate.fits", i => rates.At(i).Rate);
        Write("dark-rate-uncertainty.fits", i => rates.At(i).Uncertainty);
        Write("doubling.fits", rates.Doubling);
        return ProfileOnDisk.Read(home);

        void Write(string file, Func<int, double> value) =>
            FitsWriter.Write(
                Path.Combine(maps, file),
                new FitsImage<float>(
                    rates.Width,
                    rates.Height,
                    Enumerable.Range(0, n).Select(i => (float)value(i)).ToArray()
                ),
                durable: false
            );
    }
}
