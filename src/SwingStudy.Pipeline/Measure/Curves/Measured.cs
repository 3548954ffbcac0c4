namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>A value, a word, or the reason why there is none.</summary>
/// <param name="Value">The value in the dictionary's unit; NaN where there is none.</param>
/// <param name="Text">The word of a variable that is one.</param>
/// <param name="Reason">Why there is no value; null when there is one.</param>
internal readonly record struct Measured(double Value, string? Text, string? Reason)
{
    public static implicit operator Measured(double value) =>
        double.IsFinite(value) ? new Measured(value, null, null) : None("samples that it needs are missing");

    public static Measured None(string reason) => new(double.NaN, null, reason);

    public static Measured Word(string? text) => text is null ? None("samples that it needs are missing") : new Measured(double.NaN, text, null);
}
