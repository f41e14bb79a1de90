using SensorProfile.NoiseModel.Sky;
using SensorProfile.Setup;

namespace SensorProfile.Cli.Defaults;

/// <summary>The sky of the setup as options: a rate, lights to measure it on, or a brightness with optics and filter.</summary>
internal sealed class SkyDefaults(
    SettingsOptions known,
    TypedArguments typed,
    Action<string, string, string> add,
    Action<string> mention
)
{
    public void Take(ObservingSetup setup, string file, Func<string, double?> measure)
    {
        FilterSetup? filter = Filter(setup, file);
        bool measured = typed.Asks("--lights") && !known.Has("--dithers");
        if (measured || typed.AsksAny("--sky", "--three-skies"))
            return;
        bool typedBrightness = typed.Asks("--sky-brightness");
        if (!typedBrightness && setup.Sky?.Rate is double rate)
            add("--sky", SetupDefaults.Text(rate), $"sky {SetupDefaults.Text(rate)} e⁻/px/s");
        else if (!typedBrightness && setup.Sky?.Lights is { } lights)
        {
            if (!known.Has("--dithers"))
                add("--lights", lights, $"sky measured on {lights}");
            else if (measure(lights) is double found)
                add(
                    "--sky",
                    SetupDefaults.Text(found),
                    $"sky {QuantityText.Number(found)} e⁻/px/s, measured on {lights}"
                );
        }
        else if (typedBrightness || setup.Sky?.Brightness is not null)
            TakeBrightness(setup, filter);
    }

    /// <summary>Adds the estimate only when it is complete, since the commands refuse half of one.</summary>
    private void TakeBrightness(ObservingSetup setup, FilterSetup? filter)
    {
        bool optics =
            (typed.Asks("--focal-ratio") || setup.Telescope?.FocalRatio is not null)
            && (typed.Asks("--pixel-size") || setup.Camera?.PixelMicrometres is not null);
        if (!optics && setup.Sky?.Brightness is double magnitude && !typed.Asks("--sky-brightness"))
            mention(
                $"sky brightness {SetupDefaults.Text(magnitude)} mag/arcsec², not used: it needs a focal ratio and a pixel "
                    + "size"
            );
        if (!optics)
            return;
        if (!known.Has("--sky-brightness"))
        {
            double sky = Estimate(setup, filter);
            add("--sky", SetupDefaults.Text(sky), $"sky {QuantityText.Number(sky)} e⁻/px/s by its brightness");
            return;
        }
        Add("--sky-brightness", setup.Sky?.Brightness, "sky", "mag/arcsec²");
        Add("--focal-ratio", setup.Telescope?.FocalRatio, "f/", "");
        Add("--pixel-size", setup.Camera?.PixelMicrometres, "pixels of", "µm");
        Add("--efficiency", setup.Telescope?.Efficiency, "efficiency", "");
        Add("--bandwidth", filter?.BandwidthNanometres, $"filter {filter?.Name} of", "nm");
        Add("--wavelength", filter?.CentreNanometres, "", "");
    }

    private void Add(string option, double? value, string before, string after)
    {
        if (value is not double number)
            return;
        string words =
            before.Length == 0 ? ""
            : before.EndsWith('/') ? before + SetupDefaults.Text(number)
            : $"{before} {SetupDefaults.Text(number)} {after}".TrimEnd();
        add(option, SetupDefaults.Text(number), words);
    }

    private static double Estimate(ObservingSetup setup, FilterSetup? filter)
    {
        SkyBrightness usual = new()
        {
            Magnitude = setup.Sky!.Brightness!.Value,
            FocalRatio = setup.Telescope!.FocalRatio!.Value,
            PixelMicrometres = setup.Camera!.PixelMicrometres!.Value,
        };
        return (
            usual with
            {
                Efficiency = setup.Telescope.Efficiency ?? usual.Efficiency,
                BandwidthNanometres = filter?.BandwidthNanometres ?? usual.BandwidthNanometres,
                CentreNanometres = filter?.CentreNanometres ?? usual.CentreNanometres,
            }
        )
            .Estimate()
            .Rate.Value;
    }

    /// <summary>The filter named, or else the first one of the setup.</summary>
    private FilterSetup? Filter(ObservingSetup setup, string file)
    {
        IReadOnlyList<FilterSetup> filters = setup.Filters ?? [];
        if (typed.ValueOf("--filter") is not { } name)
            return filters.Count > 0 ? filters[0] : null;
        return filters.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.OrdinalIgnoreCase))
            ?? throw CommandFailure.WrongCommandLine(
                filters.Count == 0
                    ? $"{file} names no filter: add one with sensorprofile setup --filter {Quoted.Of(name + "=7@656")}"
                    : $"{file} has no filter called {name}; it has {string.Join(", ", filters.Select(f => f.Name))}."
            );
    }
}
