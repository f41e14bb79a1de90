namespace SensorProfile.Raw.LibRaw;

/// <summary>What the child process reports about a file, before its samples.</summary>
internal sealed record LibRawHeader
{
    private const int Mark = 0x32574152;

    /// <summary>Why the file cannot be read; null when it can.</summary>
    public string? Problem { get; init; }

    /// <summary>Category of that reason.</summary>
    public LibRawCause Cause { get; init; }

    /// <summary>Columns of exposed samples.</summary>
    public int Width { get; init; }

    /// <summary>Rows of exposed samples.</summary>
    public int Height { get; init; }

    /// <summary>Columns of all stored samples.</summary>
    public int SensorWidth { get; init; }

    /// <summary>Rows of all stored samples.</summary>
    public int SensorHeight { get; init; }

    /// <summary>Rows above the exposed ones.</summary>
    public int Top { get; init; }

    /// <summary>Columns to the left of the exposed ones.</summary>
    public int Left { get; init; }

    /// <summary>Whether the sizes are possible for a sensor.</summary>
    public bool HasPossibleSize =>
        Width >= 1
        && Height >= 1
        && Top >= 0
        && Left >= 0
        && SensorWidth is >= 1 and <= ushort.MaxValue
        && SensorHeight is >= 1 and <= ushort.MaxValue
        && Width <= SensorWidth - Left
        && Height <= SensorHeight - Top;

    /// <summary>Four letters; empty for a sensor without a filter.</summary>
    public string ColourFilter { get; init; } = "";

    /// <summary>Name of the camera.</summary>
    public string Model { get; init; } = "";

    /// <summary>ISO; 0 when unknown.</summary>
    public float Iso { get; init; }

    /// <summary>Exposure, s; 0 when unknown.</summary>
    public float ExposureSeconds { get; init; }

    /// <summary>Time of the camera's clock, seconds since 1970; 0 or less when unknown.</summary>
    public long Time { get; init; }

    /// <summary>Number of exposures in the file; the first one is read.</summary>
    public int Exposures { get; init; } = 1;

    /// <summary>Serial number; empty when unknown.</summary>
    public string SerialNumber { get; init; } = "";

    /// <summary>Offset of the camera's clock from UTC, "+02:00"; empty when unknown.</summary>
    public string Offset { get; init; } = "";

    /// <summary>A temperature stated by the file; null when there is none.</summary>
    public RawTemperature? Temperature { get; init; }

    /// <summary>Processing of the samples, as far as the file states it.</summary>
    public IReadOnlyList<RawTreatment> Treatments { get; init; } = [];

    /// <summary>Writes the header.</summary>
    public void Write(BinaryWriter writer)
    {
        writer.Write(Mark);
        writer.Write(Problem ?? "");
        writer.Write((int)Cause);
        writer.Write(Width);
        writer.Write(Height);
        writer.Write(SensorWidth);
        writer.Write(SensorHeight);
        writer.Write(Top);
        writer.Write(Left);
        writer.Write(ColourFilter);
        writer.Write(Model);
        writer.Write(Iso);
        writer.Write(ExposureSeconds);
        writer.Write(Time);
        writer.Write(Exposures);
        writer.Write(SerialNumber);
        writer.Write(Offset);
        writer.Write(Temperature is not null);
        if (Temperature is { } reading)
        {
            writer.Write(reading.Celsius);
            writer.Write(reading.StepCelsius);
            writer.Write((int)reading.Place);
            writer.Write(reading.Source);
        }
        writer.Write(Treatments.Count);
        foreach (RawTreatment treatment in Treatments)
        {
            writer.Write((int)treatment.Kind);
            writer.Write(treatment.Evidence);
        }
    }

    /// <summary>Reads the header; null when the child died before answering.</summary>
    public static LibRawHeader? Read(BinaryReader reader)
    {
        try
        {
            if (reader.ReadInt32() != Mark)
                return null;
            string problem = reader.ReadString();
            return new LibRawHeader
            {
                Problem = problem.Length > 0 ? problem : null,
                Cause = (LibRawCause)reader.ReadInt32(),
                Width = reader.ReadInt32(),
                Height = reader.ReadInt32(),
                SensorWidth = reader.ReadInt32(),
                SensorHeight = reader.ReadInt32(),
                Top = reader.ReadInt32(),
                Left = reader.ReadInt32(),
                ColourFilter = reader.ReadString(),
                Model = reader.ReadString(),
                Iso = reader.ReadSingle(),
                ExposureSeconds = reader.ReadSingle(),
                Time = reader.ReadInt64(),
                Exposures = reader.ReadInt32(),
                SerialNumber = reader.ReadString(),
                Offset = reader.ReadString(),
                Temperature = reader.ReadBoolean()
                    ? new RawTemperature(
                        reader.ReadDouble(),
                        reader.ReadDouble(),
                        (RawTemperaturePlace)reader.ReadInt32(),
                        reader.ReadString()
                    )
                    : null,
                Treatments =
                [
                    .. Enumerable
                        .Range(0, reader.ReadInt32())
                        .Select(_ => new RawTreatment((RawTreatmentKind)reader.ReadInt32(), reader.ReadString())),
                ],
            };
        }
        catch (Exception unlike) when (unlike is EndOfStreamException or FormatException or ArgumentException)
        {
            return null;
        }
    }
}
