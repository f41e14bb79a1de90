namespace SensorProfile.Fuzz.Targets;

/// <summary>A reader under fire: where its inputs start from, and what must become of every input.</summary>
/// <param name="Name">Its name in tables and in folders of found inputs.</param>
/// <param name="Seeds">Good inputs, which are spoilt.</param>
/// <param name="Tokens">Words of its format, put where they do not belong.</param>
/// <param name="Form">How its inputs are spoilt.</param>
/// <param name="Try">Reads one input: true when it was read, false when it was refused in the documented way; whatever
/// else is thrown is a fault.</param>
internal sealed record Target(
    string Name,
    IReadOnlyList<byte[]> Seeds,
    IReadOnlyList<byte[]> Tokens,
    InputForm Form,
    Func<byte[], bool> Try
)
{
    /// <summary>Bytes that one input may make the reader allocate, all objects together.</summary>
    public long MostBytes { get; init; } = 64L << 20;
}

/// <summary>What an input looks like to the mutator.</summary>
internal enum InputForm
{
    /// <summary>Numbers at offsets.</summary>
    Binary,

    /// <summary>Numbers at offsets that directories of TIFF entries name.</summary>
    Tiff,

    /// <summary>Header cards of 80 characters, then numbers.</summary>
    Cards,

    /// <summary>Characters, numbers written out.</summary>
    Text,
}
