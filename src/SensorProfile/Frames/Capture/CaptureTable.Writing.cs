using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using SensorProfile.Frames.Headers;

namespace SensorProfile.Frames.Capture;

public sealed partial class CaptureTable
{
    /// <summary>
    /// Writes a table that reads back as this inventory, for correction by hand: one row per frame in use, then those
    /// that a table left out.
    /// </summary>
    /// <remarks>
    /// The file is written beside its final name and then renamed, so that an interrupted run leaves no half table. An
    /// existing file is replaced.
    /// </remarks>
    /// <exception cref="IOException">The table cannot be written; an older one is left intact.</exception>
    public static void Write(string csvPath, Inventory inventory) =>
        AtomicFile.Write(csvPath, stream => stream.Write(Encoding.UTF8.GetBytes(TextOf(inventory))));

    internal static string TextOf(Inventory inventory)
    {
        using StringWriter text = new(CultureInfo.InvariantCulture);
        using (
            CsvWriter csv = new(
                text,
                new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\r\n" },
                leaveOpen: true
            )
        )
        {
            foreach (string column in Columns)
                csv.WriteField(column);
            csv.NextRecord();
            foreach (Frame frame in inventory.Frames)
                WriteRow(csv, frame, use: true);
            foreach (Frame frame in inventory.LeftOut)
                WriteRow(csv, frame, use: false);
        }
        return text.ToString();
    }

    private static void WriteRow(CsvWriter csv, Frame frame, bool use)
    {
        csv.WriteField(FileNames.ToCell(frame.Name));
        csv.WriteField(frame.Kind == FrameKind.Unknown ? "" : KindWords.Name(frame.Kind));
        foreach (
            double? value in (ReadOnlySpan<double?>)
                [
                    frame.ExposureSeconds,
                    frame.TemperatureCelsius,
                    frame.Settings.Gain,
                    frame.Settings.Offset,
                    frame.Settings.Iso,
                ]
        )
            csv.WriteField(value is { } number ? NumberText.Of(number) : "");
        csv.WriteField(frame.Settings.Binning);
        csv.WriteField(FileNames.ToCell(frame.SetLabel ?? ""));
        csv.WriteField(use ? "yes" : "no");
        csv.NextRecord();
    }
}
