using System.Globalization;
using SensorProfile.Desk.Asking;
using SensorProfile.Profiles.Session;
using SensorProfile.Setup;

namespace SensorProfile.Desk.Deciding;

/// <summary>The night as set by the sliders, and the questions that follow from it, as commands.</summary>
internal sealed class NightForm(IDeskDoor door)
{
    private string? begunFor;

    /// <summary>Exposure of one light, s.</summary>
    public double Exposure { get; set; } = 300;

    /// <summary>Background of the sky, e⁻/px/s.</summary>
    public double Sky { get; set; } = 1;

    /// <summary>Lights in the stack.</summary>
    public int Lights { get; set; } = 40;

    /// <summary>Dither positions among them.</summary>
    public int Dithers { get; set; } = 10;

    /// <summary>How outliers are rejected.</summary>
    public string Rejection { get; set; } = "sigma-clip";

    /// <summary>Temperature of the air, °C.</summary>
    public double Ambient { get; set; } = 10;

    /// <summary>How far below the air the cooler reaches, °C.</summary>
    public double Reach { get; set; } = 35;

    /// <summary>Whether there is no cooler.</summary>
    public bool Uncooled { get; set; }

    /// <summary>Accepted rise of the noise, %.</summary>
    public double Loss { get; set; } = 5;

    /// <summary>Starts from the user's setup, once for each profile.</summary>
    public void BeginWith(string profile)
    {
        if (begunFor == profile)
            return;
        begunFor = profile;
        ObservingSetup setup = door.Setup(profile);
        Exposure = setup.Stack?.Exposure ?? Exposure;
        Lights = setup.Stack?.Lights ?? Lights;
        Dithers = setup.Stack?.DitherPositions ?? Math.Min(Dithers, Lights);
        if (setup.Stack?.Rejection is { } rejection)
            Rejection = EnumWord.Of(rejection);
        Sky = setup.Sky?.Rate ?? Sky;
        Reach = setup.Cooling?.Reach ?? Reach;
        Uncooled = setup.Cooling?.Uncooled ?? Uncooled;
        Loss = setup.AcceptedLoss ?? Loss;
    }

    /// <summary>How cold to run it.</summary>
    public IReadOnlyList<string> Setpoint(string profile, ModeSettings? mode) =>
        [
            "setpoint",
            profile,
            .. Light(mode),
            $"--ambient={Text(Ambient)}",
            .. Uncooled ? ["--uncooled"] : new[] { $"--max-delta={Text(Reach)}" },
        ];

    /// <summary>How close the darks must be.</summary>
    public IReadOnlyList<string> Match(string profile, ModeSettings? mode, double? temperature) =>
        ["darks", "match", profile, .. Light(mode), .. Stack, .. At(temperature)];

    /// <summary>How many darks.</summary>
    public IReadOnlyList<string> Plan(string profile, ModeSettings? mode, double? temperature) =>
        ["darks", "plan", profile, .. Light(mode), .. Stack, .. At(temperature)];

    /// <summary>How long to expose.</summary>
    public IReadOnlyList<string> LightLength(string profile, double? temperature) =>
        ["exposure", profile, $"--sky={Text(Sky)}", $"--loss={Text(Loss)}", .. At(temperature)];

    /// <summary>How many flats.</summary>
    public IReadOnlyList<string> Flats(string profile, ModeSettings? mode, double? temperature) =>
        ["flats", "plan", profile, .. Light(mode), .. Stack, .. At(temperature)];

    /// <summary>The command that saves the sliders as the user's setup.</summary>
    public IReadOnlyList<string> Keep(string profile) =>
        [
            "setup",
            $"--profile={profile}",
            $"--exposure={Text(Exposure)}",
            $"--sky={Text(Sky)}",
            .. Stack,
            $"--loss={Text(Loss)}",
            .. Uncooled ? ["--uncooled"] : new[] { $"--max-delta={Text(Reach)}" },
        ];

    private string[] Stack =>
        [$"--lights={Text(Lights)}", $"--dithers={Text(Math.Min(Dithers, Lights))}", $"--rejection={Rejection}"];

    private IEnumerable<string> Light(ModeSettings? mode) =>
        [$"--exposure={Text(Exposure)}", $"--sky={Text(Sky)}", $"--loss={Text(Loss)}", .. Of(mode)];

    private static IEnumerable<string> Of(ModeSettings? mode)
    {
        if (mode is null)
            yield break;
        if (mode.Gain is double gain)
            yield return $"--gain={Text(gain)}";
        if (mode.Offset is double offset)
            yield return $"--offset={Text(offset)}";
        if (mode.Iso is double iso)
            yield return $"--iso={Text(iso)}";
        if (mode.Binning is { } binning)
            yield return $"--binning={binning}";
        if (mode.Readout is { } readout)
            yield return $"--readout={readout}";
    }

    private static string[] At(double? temperature) =>
        temperature is double celsius ? [$"--temperature={celsius.ToString("0.#", CultureInfo.InvariantCulture)}"] : [];

    private static string Text(double number) => number.ToString("R", CultureInfo.InvariantCulture);
}
