namespace SensorProfile.Reporting.Answers;

/// <summary>What the user could specify to make an answer their own; the command line knows the options for it.</summary>
internal enum AnswerHint
{
    /// <summary>The sky was assumed.</summary>
    GiveSky,

    /// <summary>The air of the nights is not known.</summary>
    GiveAmbient,

    /// <summary>How far the cooler reaches is not known.</summary>
    GiveCoolerReach,

    /// <summary>How much warmer than the air an uncooled sensor runs is not known.</summary>
    GiveSelfHeating,
}
