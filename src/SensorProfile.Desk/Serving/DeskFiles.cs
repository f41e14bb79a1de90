using System.Reflection;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using SensorProfile.Reporting.Drawing;
using SensorProfile.Reporting.Handbook;
using SensorProfile.Reporting.Html;
using SensorProfile.Reporting.Views;

namespace SensorProfile.Desk.Serving;

/// <summary>What the pages fetch besides themselves: style, scripts, pictures of the sensor, files of opened
/// results.</summary>
internal static class DeskFiles
{
    /// <summary>For reports of this program, opened beside the desk: they embed their style and need no script.</summary>
    private const string ReportPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; "
        + "frame-ancestors 'none'; sandbox";

    private static readonly (string Address, string Name, string Type)[] _own =
    [
        ("/desk.css", "desk.css", "text/css"),
        ("/desk.js", "desk.js", "text/javascript"),
        ("/look.js", "look.js", "text/javascript"),
        ("/desk.svg", "desk.svg", "image/svg+xml"),
        ("/_framework/blazor.web.js", "blazor.web.js", "text/javascript"),
    ];

    public static void Map(IEndpointRouteBuilder app)
    {
        foreach ((string address, string name, string type) in _own)
        {
            byte[] content = Own(name);
            app.MapGet(address, () => Results.Bytes(content, type));
        }
        MapStyle(app, "/report.css", HtmlReport.StyleSheet());
        MapStyle(app, "/handbook.css", HandbookPages.StyleSheet());
        app.MapGet("/map/{number:int}/{map:int}.png", Picture);
        app.MapGet("/figure/{number:int}/{name}", Figure);
        app.MapGet("/result/{number:int}/{**name}", File);
    }

    private static void MapStyle(IEndpointRouteBuilder app, string address, string sheet)
    {
        byte[] content = System.Text.Encoding.UTF8.GetBytes(sheet);
        app.MapGet(address, () => Results.Bytes(content, "text/css"));
    }

    private static IResult Picture(
        ResultShelf shelf,
        int number,
        int map,
        int left = 0,
        int top = 0,
        int width = int.MaxValue,
        int height = int.MaxValue
    )
    {
        if (shelf.Find(number) is not { } result || map < 0 || map >= result.Maps.Count)
            return Results.NotFound();
        SensorMap known = result.Maps[map];
        MapWindow window = known.Whole.Within(left, top, width, height);
        return Results.Bytes(known.Png(window), "image/png");
    }

    private static IResult Figure(ResultShelf shelf, int number, string name) =>
        shelf.Find(number)?.Sections.SelectMany(s => s.Figures).FirstOrDefault(f => f.Name == name) is { } figure
            ? Results.Bytes(figure.Svg(), "image/svg+xml", figure.Name)
            : Results.NotFound();

    private static IResult File(HttpContext context, ResultShelf shelf, int number, string name)
    {
        if (shelf.Find(number) is not { } result || ResultFiles.Find(result.Folder, name) is not { } path)
            return Results.NotFound();
        if (Path.GetExtension(path) != ".html")
            return Results.File(path, Type(path), Path.GetFileName(path));
        context.Response.Headers.ContentSecurityPolicy = ReportPolicy;
        return Results.File(path, "text/html; charset=utf-8");
    }

    private static string Type(string path) =>
        Path.GetExtension(path) switch
        {
            ".pdf" => "application/pdf",
            ".csv" => "text/csv; charset=utf-8",
            ".json" => "application/json",
            _ => "application/octet-stream",
        };

    private static byte[] Own(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("desk/" + name)
            ?? throw new InvalidOperationException($"The program was built without {name}.");
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
