using SensorProfile.Profiles;
using SensorProfile.Profiles.Response;
using SensorProfile.Reporting.Content.Blocks;
using SensorProfile.Reporting.Plots.Sensor;

namespace SensorProfile.Reporting.Content.Sensor;

/// <summary>Gain, full well and linearity from pairs of flats.</summary>
internal static class LightSection
{
    /// <summary>The section.</summary>
    public static ReportSection Compose(ModeContext context)
    {
        PhotonTransferProfile? transfer = context.Mode.PhotonTransfer;
        var blocks = new List<Block>();
        if (PhotonTransferPlot.Draw(transfer) is { } curve)
        {
            blocks.Add(context.Figure(curve, Caption(transfer!), "photon-transfer"));
            blocks.Add(Fits(transfer!.Curves));
        }
        else
        {
            blocks.AddRange(
                context.Absent(
                    "There is no photon-transfer curve. Gain and full well need pairs of flats at six or more levels "
                        + "up to saturation, with darks of the same exposure.",
                    FindingsBehind.PhotonTransfer
                )
            );
        }
        if (LinearityPlot.Draw(transfer) is { } linearity)
        {
            blocks.Add(
                context.Figure(
                    linearity,
                    "Deviation of the flat levels from a straight line through 5 % to 95 % of saturation. The bars (95 %) "
                        + "hold the uncertainty of the level alone: "
                        + "a drifting lamp shows here too. "
                        + Linearity(context.Mode),
                    "photon-transfer"
                )
            );
        }
        else if (transfer is not null)
        {
            blocks.AddRange(
                context.Absent(
                    "Linearity could not be judged: it needs flats at several exposures of a steady light.",
                    FindingsBehind.Linearity
                )
            );
        }
        blocks.AddRange(FlatsOnFlats(context.Mode));
        return new ReportSection("Gain, full well and linearity", context.Label, blocks);
    }

    private static IEnumerable<Block> FlatsOnFlats(ModeProfile mode)
    {
        if (mode.FlatResidual is not { } pixels || mode.FlatResidualOverAreas is not { } areas)
            yield break;
        yield return new SubheadingBlock("Flat-field residual");
        yield return new TextBlock(
            "Half of the flats of one level, taken as a master flat, calibrate the other half; what is left beyond photon "
                + $"noise is {QuantityText.Of(pixels)} of the signal from pixel to pixel and {QuantityText.Of(areas)} over "
                + "areas of 32 × 32 px: response, dust and lamp that flats do not remove. Taking more flats does not "
                + "reduce it; lights taken under other conditions may keep more."
        );
    }

    private static string Caption(PhotonTransferProfile transfer)
    {
        PhotonTransferCurve first = transfer.Curves[0];
        string ends = first.SaturatedBy switch
        {
            SaturationCause.Adc => " The converter reaches its highest code before the pixels are full.",
            SaturationCause.Pixel => " The variance falls before the highest code: the pixels are full.",
            _ => "",
        };
        return "Photon transfer: the variance of a pair of flats grows with the signal, and the slope is the gain. "
            + "Filled points were fitted; the line spans the fit. "
            + "Below: residuals of the chosen "
            + $"fit{(transfer.Curves.Count == 1 && first.GainCurved is not null ? ", and the other fit as a line" : "")}. "
            + $"Bars: 95 %.{ends}";
    }

    private static string Linearity(ModeProfile mode) =>
        mode.LinearityError is { } error ? $"Mean absolute deviation {QuantityText.Of(error)}." : "";

    private static TableBlock Fits(IReadOnlyList<PhotonTransferCurve> curves) =>
        new(
            [
                "Channel",
                "Gain, straight, e⁻/ADU",
                "Gain, curved, e⁻/ADU",
                "Curvature, 1/ADU",
                "Intercept, ADU²",
                "Chosen",
            ],
            [
                .. curves.Select(curve =>
                    (IReadOnlyList<string>)
                        [
                            curve.Channel,
                            TableCell.Of(curve.GainStraight),
                            TableCell.Of(curve.GainCurved),
                            TableCell.Of(curve.Curvature),
                            TableCell.Of(curve.Intercept),
                            EnumWord.Of(curve.Selected),
                        ]
                ),
            ],
            [0.1, 0.2, 0.2, 0.22, 0.17, 0.11]
        )
        {
            FirstNumberColumn = 1,
            LastNumberColumn = 4,
        };
}
