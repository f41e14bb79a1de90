using System.Text;

namespace SensorProfile.Cli.Output;

/// <summary>Writes a list as a CSV file: UTF-8, complete or absent.</summary>
internal static class CsvFile
{
    public static void Write(string path, Action<TextWriter> fill) => OutputFile.Write(path, work =>
        {
            using StreamWriter writer = new(work, append: false, new UTF8Encoding(false));
            fill(writer);
        });
}
