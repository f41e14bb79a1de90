using System.Globalization;
using SensorProfile.Cli.Commands.Options;
using SensorProfile.Cli.Terminal;
using SensorProfile.NoiseModel;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Commands;

/// <summary>
/// Asks for a setup, question by question: an empty line keeps the present value, a dash clears it, the end of the input
/// keeps the rest.
/// </summary>
internal sealed class SetupQuestions(TextReader person, StandardErrorStream side)
{
    public ObservingSetup Ask(ObservingSetup setup)
    {
        side.WriteLine("Enter keeps the value in brackets, - clears it.");
        string? profile = Text("Profile of your camera (a folder or profile.json)", setup.Camera?.Profile);
        double? focal = Number("Focal ratio of your telescope, such as 5", setup.Telescope?.FocalRatio);
        double? pixel = Number("Pixel size of your camera, µm", setup.Camera?.PixelMicrometres);
        double? sky = Number(
            "Brightness of your sky, mag/arcsec² (city 18, suburb 19.5 to 20.5, dark 21.5)",
            setup.Sky?.Brightness
        );
        string? filters = Text(
            "Filters, name=width@centre in nm, such as L=300@550 Ha=7@656",
            setup.Filters is { Count: > 0 } known ? string.Join(' ', known.Select(FilterText.Of)) : null
        );
        double? exposure = Number("Usual exposure of one light, s", setup.Stack?.Exposure);
        int? lights = Count("Lights in your stack", setup.Stack?.Lights);
        int? dithers = Count("Dither positions among them (1: you do not dither)", setup.Stack?.DitherPositions);
        Rejection? rejection = Choice(
            "Your stack's rejection: none, sigma-clip, winsorised or median",
            setup.Stack?.Rejection
        );
        double? reach = Number(
            "How far below the air your cooler reaches, °C (-: no cooler)",
            setup.Cooling?.Reach,
            out bool forgotten
        );
        double? loss = Number("Rise in noise that you accept, %", setup.AcceptedLoss);
        bool? uncooled =
            forgotten ? true
            : reach is null ? setup.Cooling?.Uncooled
            : null;
        return setup with
        {
            Camera =
                profile is null && pixel is null
                    ? null
                    : new CameraSetup
                    {
                        Profile = profile is null ? null : Path.GetFullPath(profile),
                        PixelMicrometres = pixel,
                    },
            Telescope =
                focal is null && setup.Telescope?.Efficiency is null
                    ? null
                    : new TelescopeSetup { FocalRatio = focal, Efficiency = setup.Telescope?.Efficiency },
            Sky =
                sky == setup.Sky?.Brightness ? setup.Sky
                : sky is null ? null
                : new SkySetup { Brightness = sky },
            Filters = filters?.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(FilterText.Parse).ToList(),
            Stack =
                exposure is null
                && lights is null
                && dithers is null
                && rejection is null
                && setup.Stack?.Smooth is null
                    ? null
                    : new StackSetup
                    {
                        Exposure = exposure,
                        Lights = lights,
                        DitherPositions = dithers,
                        Rejection = rejection,
                        Smooth = setup.Stack?.Smooth,
                    },
            Cooling =
                reach is null && uncooled is null && setup.Cooling?.Nights is null
                    ? null
                    : new CoolingSetup
                    {
                        Reach = reach,
                        Uncooled = uncooled,
                        Nights = setup.Cooling?.Nights,
                    },
            AcceptedLoss = loss,
        };
    }

    private string? Text(string question, string? present, out bool forgotten)
    {
        side.WriteLine($"{question}{(present is null ? "" : $" [{present}]")}:");
        string? answer = person.ReadLine()?.Trim();
        forgotten = answer is "-" or "−";
        return forgotten ? null
            : string.IsNullOrEmpty(answer) ? present
            : answer;
    }

    private string? Text(string question, string? present) => Text(question, present, out _);

    private double? Number(string question, double? present) => Number(question, present, out _);

    private double? Number(string question, double? present, out bool forgotten)
    {
        while (true)
        {
            string? text = Text(question, present?.ToString(CultureInfo.InvariantCulture), out forgotten);
            if (text is null)
                return null;
            if (
                double.TryParse(
                    text.Replace(',', '.'),
                    NumberStyles.Float,
                    CultureInfo.InvariantCulture,
                    out double number
                )
            )
                return number;
            side.WriteLine($"'{text}' is not a number.");
        }
    }

    private int? Count(string question, int? present)
    {
        while (true)
        {
            string? text = Text(question, present?.ToString(CultureInfo.InvariantCulture));
            if (text is null)
                return null;
            if (int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out int number) && number >= 1)
                return number;
            side.WriteLine($"'{text}' is not a whole number of 1 or more.");
        }
    }

    private Rejection? Choice(string question, Rejection? present)
    {
        while (true)
        {
            string? text = Text(question, present is { } now ? EnumWord.Of(now) : null);
            if (text is null)
                return null;
            if (
                Enum.GetValues<Rejection>()
                    .Where(r => EnumWord.Of(r).Equals(text, StringComparison.OrdinalIgnoreCase))
                    .ToArray()
                is [var found]
            )
                return found;
            side.WriteLine($"'{text}' is none of these.");
        }
    }
}
