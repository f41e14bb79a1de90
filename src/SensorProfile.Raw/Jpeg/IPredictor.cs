namespace SensorProfile.Raw.Jpeg;

/// <summary>One of the seven predictors of lossless JPEG (ITU-T T.81, table H.1).</summary>
internal interface IPredictor
{
    /// <summary>Prediction from three neighbours of the same component.</summary>
    /// <param name="left">Ra, the previous sample.</param>
    /// <param name="above">Rb, the sample above.</param>
    /// <param name="aboveLeft">Rc, the sample to the left of the one above.</param>
    static abstract int Predict(int left, int above, int aboveLeft);
}

/// <summary>1: Ra.</summary>
internal readonly struct LeftPredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => left;
}

/// <summary>2: Rb.</summary>
internal readonly struct AbovePredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => above;
}

/// <summary>3: Rc.</summary>
internal readonly struct AboveLeftPredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => aboveLeft;
}

/// <summary>4: Ra + Rb − Rc.</summary>
internal readonly struct PlanePredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => left + above - aboveLeft;
}

/// <summary>5: Ra + (Rb − Rc)/2.</summary>
internal readonly struct LeftSlopePredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => left + ((above - aboveLeft) >> 1);
}

/// <summary>6: Rb + (Ra − Rc)/2.</summary>
internal readonly struct AboveSlopePredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => above + ((left - aboveLeft) >> 1);
}

/// <summary>7: (Ra + Rb)/2.</summary>
internal readonly struct MeanPredictor : IPredictor
{
    public static int Predict(int left, int above, int aboveLeft) => (left + above) >> 1;
}
