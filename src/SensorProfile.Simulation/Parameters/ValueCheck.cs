using System.Globalization;
using SensorProfile.Frames;
using SensorProfile.Simulation.Parameters.Sensor;
using SensorProfile.Simulation.Parameters.Session;

namespace SensorProfile.Simulation.Parameters;

/// <summary>
/// Checks the values of a camera description; the first invalid one raises an error with its place, value and limits.
/// </summary>
/// <param name="file">Name for error messages.</param>
internal sealed class ValueCheck(string file)
{
    private const long MaxPixels = 500_000_000;
    private const double HottestCelsius = 100;
    private const double ColdestCelsius = -150;

    /// <summary>Checks all values.</summary>
    public void Check(CameraDescription camera)
    {
        Frame(camera);
        Levels(camera);
        if (camera.DarkCurrent is { } dark)
        {
            Dark(dark);
        }
        Pixels(camera);
        Glow(camera.Glow);
        if (camera.Physics is { } physics)
        {
            new PhysicsCheck(Within).Check(physics);
        }
        Conditions(camera);
        Ageing(camera.Ageing);
        Shots(camera);
        Faults(camera);
    }

    private void Frame(CameraDescription camera)
    {
        Within("width", camera.Width, 1, 65535);
        Within("height", camera.Height, 1, 65535);
        if ((long)camera.Width * camera.Height > MaxPixels)
        {
            Fail(
                "height",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{camera.Width} × {camera.Height} pixels are more than {MaxPixels}."
                ),
                "Simulate a window of the sensor."
            );
        }
        Within("bits", camera.Bits, 8, 16);
        Within("codeStep", camera.CodeStep, 1, 256);
        if (((1 << camera.Bits) - 1) * camera.CodeStep > ushort.MaxValue)
        {
            Fail(
                "codeStep",
                $"{camera.Bits} bits with a step of {camera.CodeStep} exceed the 65535 of a 16-bit file.",
                "Lower one of them."
            );
        }
        if (camera.ColourFilter is { } colours && !(colours is "RGGB" or "BGGR" or "GRBG" or "GBRG"))
        {
            Fail(
                "colourFilter",
                $"found '{colours}'.",
                "Use RGGB, BGGR, GRBG or GBRG, or leave it out for monochrome."
            );
        }
        Within("maskedBorder.left", camera.MaskedBorder.Left, 0, 4096);
        Within("maskedBorder.top", camera.MaskedBorder.Top, 0, 4096);
        Within("maskedBorder.darkShare", camera.MaskedBorder.DarkShare, 0, 100);
        Within("maskedBorder.levelOffset", camera.MaskedBorder.LevelOffset, -65535, 65535);
        Within("ageYears", camera.AgeYears, 0, 100);
    }

    private void Levels(CameraDescription camera)
    {
        Within("gain", camera.Gain, 1e-4, 1e4);
        Within("readNoise", camera.ReadNoise, 0, 1e5);
        Within("readNoiseSpread", camera.ReadNoiseSpread, 0, 3);
        Within("biasLevel", camera.BiasLevel, -65535, 65535);
        Within("fullWell", camera.FullWell, 1, 1e8);
        Within("nonlinearity", camera.Nonlinearity, -0.49, 0.49);
        Within("brighterFatter", camera.BrighterFatter, -1e-3, 1e-3);
        Within("rowNoise", camera.RowNoise, 0, 1e5);
        Within("columnNoise", camera.ColumnNoise, 0, 1e5);
        Within("responseNonuniformity", camera.ResponseNonuniformity, 0, 0.3);
        Within("vignetting", camera.Vignetting, 0, 1);
        Within("colourResponse.red", camera.ColourResponse.Red, 0, 100);
        Within("colourResponse.green", camera.ColourResponse.Green, 0, 100);
        Within("colourResponse.blue", camera.ColourResponse.Blue, 0, 100);
        Within("biasPattern.column", camera.BiasPattern.Column, 0, 65535);
        Within("biasPattern.row", camera.BiasPattern.Row, 0, 65535);
        Within("biasPattern.pixel", camera.BiasPattern.Pixel, 0, 65535);
        Within("pedestal.jitter", camera.Pedestal.Jitter, 0, 65535);
        Within("pedestal.driftPerHour", camera.Pedestal.DriftPerHour, -65535, 65535);
        Within("pedestal.driftPerDegree", camera.Pedestal.DriftPerDegree, -65535, 65535);
        Within("pedestal.step", camera.Pedestal.Step, 0, 65535);
    }

    private void Dark(DarkCurrentParameters dark)
    {
        Within("darkCurrent.rateAtReference", dark.RateAtReference, 0, 1e7);
        Within("darkCurrent.floor", dark.Floor, 0, 1e7);
        Within("darkCurrent.referenceTemperature", dark.ReferenceTemperature, ColdestCelsius, HottestCelsius);
        Within("darkCurrent.doublingTemperature", dark.DoublingTemperature, 0.5, 1000);
        Within("darkCurrent.activationEnergy", dark.ActivationEnergy, 0, 3);
        Within("darkCurrent.temperatureExponent", dark.TemperatureExponent, 0, 5);
        Within("darkCurrent.diffusionShare", dark.DiffusionShare, 0, 1);
        Within("darkCurrent.bandGap", dark.BandGap, 0.1, 3);
        int laws =
            (dark.DoublingTemperature is null ? 0 : 1)
            + (dark.ActivationEnergy is null ? 0 : 1)
            + (dark.DiffusionShare is null ? 0 : 1);
        if (laws != 1)
        {
            Fail(
                "darkCurrent",
                $"{laws} temperature laws are given.",
                "Give exactly one of doublingTemperature, activationEnergy and diffusionShare."
            );
        }
    }

    private void Pixels(CameraDescription camera)
    {
        Within("darkNonuniformity", camera.DarkNonuniformity, 0, 3);
        HotPixels hot = camera.HotPixels;
        Within("hotPixels.share", hot.Share, 0, 1);
        Within("hotPixels.activation", hot.Activation, 0.3, 3);
        Within("hotPixels.activationSpread", hot.ActivationSpread, 0, 1);
        Within("hotPixels.distribution.minimum", hot.Distribution.Minimum, 1e-9, 1e7);
        Within("hotPixels.distribution.maximum", hot.Distribution.Maximum, hot.Distribution.Minimum, 1e7);
        Within("hotPixels.distribution.scale", hot.Distribution.Scale, 1e-9, 1e7);
        TelegraphPixels telegraph = camera.TelegraphPixels;
        Within("telegraphPixels.share", telegraph.Share, 0, 1);
        Within("telegraphPixels.amplitude", telegraph.Amplitude, 0, 1e6);
        Within("telegraphPixels.rate", telegraph.Rate, 0, 1e6);
        Within("telegraphPixels.amplitudeSpread", telegraph.AmplitudeSpread, 0, 3);
        Within("telegraphPixels.dwellHigh", telegraph.DwellHigh, 0.01, 1e7);
        Within("telegraphPixels.dwellLow", telegraph.DwellLow, 0.01, 1e7);
        Within("telegraphPixels.dwellSpread", telegraph.DwellSpread, 0, 3);
        Within("deadPixels.share", camera.DeadPixels.Share, 0, 1);
        Within("deadPixels.response", camera.DeadPixels.Response, 0, 1);
        Within("coldPixels.share", camera.ColdPixels.Share, 0, 1);
        Within("coldPixels.relativeRate", camera.ColdPixels.RelativeRate, 0, 1);
        Clusters(camera);
        Lines("badColumns", camera.BadColumns, camera.Width);
        Lines("badRows", camera.BadRows, camera.Height);
        Taps(camera);
    }

    private void Clusters(CameraDescription camera)
    {
        HotClusters clusters = camera.HotClusters;
        Within("hotClusters.count", clusters.Count, 0, MaxPixels);
        Within("hotClusters.size", clusters.Size, 1, 10000);
        Within("hotClusters.rate", clusters.Rate, 0, 1e7);
        if (
            (long)clusters.Count * clusters.Size * Sensors.ClusterPlaces.RoomPerPixel
            > (long)camera.Width * camera.Height
        )
        {
            Fail(
                "hotClusters.count",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{clusters.Count} clusters of {clusters.Size} pixels would touch each other on {camera.Width} × "
                        + $"{camera.Height} pixels."
                ),
                "Use fewer or smaller ones."
            );
        }
    }

    private void Lines(string field, BadLines lines, int most)
    {
        Within($"{field}.count", lines.Count, 0, most);
        Within($"{field}.rate", lines.Rate, 0, 1e7);
        Within($"{field}.response", lines.Response, 0, 10);
        Within($"{field}.offset", lines.Offset, -65535, 65535);
    }

    private void Taps(CameraDescription camera)
    {
        for (int i = 0; i < camera.Taps.Count; i++)
        {
            string at = string.Create(CultureInfo.InvariantCulture, $"taps[{i}]");
            Within($"{at}.firstColumn", camera.Taps[i].FirstColumn, 1, camera.Width);
            Within($"{at}.firstRow", camera.Taps[i].FirstRow, 1, camera.Height);
            Within($"{at}.offset", camera.Taps[i].Offset, -65535, 65535);
            Within($"{at}.response", camera.Taps[i].Response, 0, 10);
            Within($"{at}.noise", camera.Taps[i].Noise, 0, 100);
        }
    }

    private void Glow(IReadOnlyList<Glow> glows)
    {
        for (int i = 0; i < glows.Count; i++)
        {
            string at = string.Create(CultureInfo.InvariantCulture, $"glow[{i}]");
            Within($"{at}.rate", glows[i].Rate, 0, 1e6);
            Within($"{at}.width", glows[i].Width, 0.1, 1e6);
            Within($"{at}.length", glows[i].Length, 0.1, 1e6);
            Within($"{at}.x", glows[i].X, -1e6, 1e6);
            Within($"{at}.y", glows[i].Y, -1e6, 1e6);
            Within($"{at}.doublingTemperature", glows[i].DoublingTemperature, 0.5, 1000);
            Within($"{at}.exposureExponent", glows[i].ExposureExponent, 0, 3);
            Within($"{at}.referenceExposure", glows[i].ReferenceExposure, 1e-3, 1e5);
            Within($"{at}.activationEnergy", glows[i].ActivationEnergy, 0, 3);
            Within($"{at}.warmUp", glows[i].WarmUp, -1, 100);
            Within($"{at}.warmUpTime", glows[i].WarmUpTime, 0.1, 1e5);
        }
    }

    private void Conditions(CameraDescription camera)
    {
        Within("lamp.drift", camera.Lamp.Drift, -0.5, 0.5);
        Within("lamp.jitter", camera.Lamp.Jitter, 0, 0.5);
        Within("lamp.flickerAmplitude", camera.Lamp.FlickerAmplitude, 0, 1);
        Within("lamp.flickerRows", camera.Lamp.FlickerRows, 1, 1e6);
        Within("thermometer.probeOffset", camera.Thermometer.ProbeOffset, -50, 50);
        Within("thermometer.wobble", camera.Thermometer.Wobble, 0, 20);
        Within("thermometer.driftPerHour", camera.Thermometer.DriftPerHour, -100, 100);
        Within("thermometer.resolution", camera.Thermometer.Resolution, 0, 10);
        Within("thermometer.stuckAt", camera.Thermometer.StuckAt, -1000, 1000);
        Within("inCamera.scaleRed", camera.InCamera.ScaleRed, 0, 10);
        Within("inCamera.scaleGreen", camera.InCamera.ScaleGreen, 0, 10);
        Within("inCamera.scaleBlue", camera.InCamera.ScaleBlue, 0, 10);
        Within("inCamera.smoothing", camera.InCamera.Smoothing, 0, 1);
        Within("inCamera.hotPixelThreshold", camera.InCamera.HotPixelThreshold, 0, 65535);
        Within("cosmicRays.hitsPerMegapixelSecond", camera.CosmicRays.HitsPerMegapixelSecond, 0, 1000);
        Within("cosmicRays.electronsPerPixel", camera.CosmicRays.ElectronsPerPixel, 0, 1e7);
        Within("cosmicRays.length", camera.CosmicRays.Length, 0, 1000);
        Within("tornFrames.share", camera.TornFrames.Share, 0, 1);
        Within("firstFrame.offset", camera.FirstFrame.Offset, -65535, 65535);
        Within("firstFrame.darkFactor", camera.FirstFrame.DarkFactor, 0, 100);
        Within("stars.count", camera.Stars.Count, 0, 1e6);
        Within("stars.fullWidthHalfMaximum", camera.Stars.FullWidthHalfMaximum, 0.5, 100);
        Within("stars.brightest", camera.Stars.Brightest, 0, 1e8);
        Within("stars.dither", camera.Stars.Dither, 0, 1000);
    }

    private void Ageing(Ageing ageing)
    {
        Within("ageing.darkGrowth", ageing.DarkGrowth, -0.9, 10);
        Within("ageing.newHotShare", ageing.NewHotShare, 0, 0.5);
        Within("ageing.healedShare", ageing.HealedShare, 0, 0.99);
        Within("ageing.glowGrowth", ageing.GlowGrowth, -0.9, 10);
        Within("ageing.probeDrift", ageing.ProbeDrift, -10, 10);
        Within("ageing.gainDrift", ageing.GainDrift, -0.5, 0.5);
        Within("ageing.readNoiseGrowth", ageing.ReadNoiseGrowth, -0.5, 5);
        if (ageing.Patch is { } patch)
        {
            Within("ageing.patch.x", patch.X, -1e6, 1e6);
            Within("ageing.patch.y", patch.Y, -1e6, 1e6);
            Within("ageing.patch.radiusPerYear", patch.RadiusPerYear, 0, 1e5);
            Within("ageing.patch.density", patch.Density, 0, 1);
            Within("ageing.patch.rate", patch.Rate, 0, 1e7);
        }
    }

    private void Shots(CameraDescription camera)
    {
        for (int i = 0; i < camera.Shots.Count; i++)
        {
            Shot shot = camera.Shots[i];
            string at = string.Create(CultureInfo.InvariantCulture, $"shots[{i}]");
            if (shot.Kind == FrameKind.Unknown)
            {
                Fail($"{at}.kind", "found 'unknown'.", "Use bias, dark, flat, dark-flat or light.");
            }
            Within($"{at}.exposure", shot.Exposure, 0, 1e5);
            Within($"{at}.temperature", shot.Temperature, ColdestCelsius, HottestCelsius);
            Within($"{at}.probeOffset", shot.ProbeOffset, -50, 50);
            Within($"{at}.count", shot.Count, 1, 100000);
            Within($"{at}.level", shot.Level, 0, 1e7);
            Within($"{at}.lightLeak", shot.LightLeak, 0, 1e6);
            Within($"{at}.pause", shot.Pause, 0, 1e7);
            if (shot.Level > 0 && shot.Kind is not (FrameKind.Flat or FrameKind.Light))
            {
                Fail(
                    $"{at}.level",
                    "only flats and lights collect light.",
                    "Remove it, or use lightLeak for stray light."
                );
            }
        }
    }

    private void Faults(CameraDescription camera)
    {
        for (int i = 0; i < camera.Faults.Count; i++)
        {
            Fault fault = camera.Faults[i];
            string at = string.Create(CultureInfo.InvariantCulture, $"faults[{i}]");
            Within($"{at}.shot", fault.Shot, 1, Math.Max(1, camera.Shots.Count));
            Within($"{at}.frame", fault.Frame, 1, 100000);
            Within($"{at}.tornFromRow", fault.TornFromRow, 1, camera.Height);
            Within($"{at}.cutBytes", fault.CutBytes, 0, int.MaxValue);
        }
    }

    private void Within(string field, double? value, double least, double most)
    {
        if (value is { } found && !(found >= least && found <= most))
        {
            string text = string.Create(
                CultureInfo.InvariantCulture,
                $"found {found}, which is not within {least}…{most}."
            );
            Fail(field, text, "Correct the value there.");
        }
    }

    private void Fail(string field, string problem, string remedy) =>
        throw new CameraDescriptionException(file, "$." + field, problem, remedy);
}
