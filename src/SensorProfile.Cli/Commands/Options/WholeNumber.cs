using System.ComponentModel;
using System.Globalization;
using System.Numerics;

namespace SensorProfile.Cli.Commands.Options;

/// <summary>Reads a whole number from the command line.</summary>
/// <typeparam name="T">Its type, which sets its bounds.</typeparam>
internal sealed class WholeNumber<T> : TypeConverter
    where T : IBinaryInteger<T>
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) =>
        sourceType == typeof(string);

    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        T.TryParse((string)value, NumberStyles.Integer, CultureInfo.InvariantCulture, out T? number)
            ? number
            : throw CommandFailure.WrongCommandLine($"'{value}' is not a whole number.");
}
