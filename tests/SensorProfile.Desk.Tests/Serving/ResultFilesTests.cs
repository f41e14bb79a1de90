using System.Net.Sockets;
using System.Text;
using SensorProfile.Cli.Tests.Running;
using SensorProfile.Desk.Tests.Running;
using SensorProfile.Reporting.Views;

namespace SensorProfile.Desk.Tests.Serving;

/// <summary>Of the disk only the files of opened results are handed out.</summary>
public sealed class ResultFilesTests(OpenDesk desk) : IClassFixture<OpenDesk>, IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task AFileOfOpenedResultsIsServedAndNothingBesideThem()
    {
        Directory.CreateDirectory(folder["results/tables"]);
        TarnProfile.Write(folder["results/profile.json"]);
        File.WriteAllText(folder["results/tables/rates.csv"], "a,b\r\n");
        File.WriteAllText(folder["results/notes.txt"], "private");
        File.WriteAllText(folder["secret.csv"], "private");
        File.CreateSymbolicLink(folder["results/tables/link.csv"], folder["secret.csv"]);
        int number = desk.Shelf.Open(folder["results"]).Number;

        Assert.StartsWith("HTTP/1.1 200", await Ask($"/result/{number}/profile.json"), StringComparison.Ordinal);
        Assert.EndsWith("a,b\r\n", await Ask($"/result/{number}/tables/rates.csv"), StringComparison.Ordinal);
        string[] others =
        [
            $"/result/{number}/notes.txt",
            $"/result/{number}/tables/link.csv",
            $"/result/{number}/../secret.csv",
            $"/result/{number}/tables/../../secret.csv",
            $"/result/{number}/..%2fsecret.csv",
            $"/result/{number}/%2e%2e%2fsecret.csv",
            $"/result/{number}/tables/..%2f..%2fsecret.csv",
            $"/result/{number}/tables/..%5c..%5csecret.csv",
            $"/result/{number}/{Uri.EscapeDataString(folder["secret.csv"])}",
            $"/result/{number}/{folder["secret.csv"]}",
            $"/result/{number + 1}/profile.json",
            "/../../../../etc/passwd",
            "/desk.css/../../etc/passwd",
        ];
        foreach (string other in others)
        {
            string answer = await Ask(other);
            Assert.Matches("^HTTP/1.1 40[034] ", answer);
            Assert.DoesNotContain("private", answer, StringComparison.Ordinal);
            Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void NamesOfCamerasAreTextNotMarkup()
    {
        TarnProfile.WriteNamed(folder["profile.json"], "<script>alert(1)</script><img src=x onerror=alert(2)>");
        StoredResult result = StoredResult.Open(folder.Path);
        Assert.DoesNotContain("<script", result.Card, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img src=x", result.Card, StringComparison.OrdinalIgnoreCase);
        Assert.All(result.Sections, s => Assert.DoesNotContain("<script", s.Html, StringComparison.OrdinalIgnoreCase));
    }

    // as it is typed: a client of the library would tidy the path before sending it
    private async Task<string> Ask(string path)
    {
        using TcpClient client = new();
        await client.ConnectAsync("127.0.0.1", desk.Root.Port);
        await using NetworkStream stream = client.GetStream();
        await stream.WriteAsync(
            Encoding.ASCII.GetBytes(
                $"GET {path} HTTP/1.1\r\nHost: {desk.Root.Authority}\r\nCookie: {desk.Cookie}\r\nConnection: close\r\n\r\n"
            )
        );
        using StreamReader reader = new(stream);
        return await reader.ReadToEndAsync();
    }
}
