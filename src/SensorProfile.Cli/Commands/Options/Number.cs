using System.ComponentModel;
using System.Globalization;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>Reads a number from the command line, with a decimal point whatever the locale.</summary>
internal sealed class Number : TypeConverter
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) =>
        sourceType == typeof(string);

    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        Parse((string)value);

    public static double Parse(string text)
    {
        if (
            double.TryParse(
                text.Replace('−', '-').TrimEnd('%'),
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out double number
            ) && double.IsFinite(number)
        )
            return number;
        string hint = text.Contains(',') && !text.Contains('.') ? $" Write {text.Replace(',', '.')}." : "";
        throw CommandFailure.WrongCommandLine($"'{text}' is not a number.{hint}");
    }
}
