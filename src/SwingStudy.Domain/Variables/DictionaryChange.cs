namespace SwingStudy.Domain.Variables;

/// <summary>One difference between two dictionaries.</summary>
/// <param name="Variable">Name of the variable.</param>
/// <param name="Property">What changed, as the declaration spells it; <c>variable</c> when the whole variable came or went.</param>
/// <param name="Before">How it was; null when it was not there.</param>
/// <param name="After">How it is; null when it is gone.</param>
/// <param name="Weight">How much that weighs.</param>
/// <param name="Consequence">What it means for data.</param>
public sealed record DictionaryChange(string Variable, string Property, string? Before, string? After, ChangeWeight Weight, string Consequence)
{
    /// <summary>"ball_speed, unit: m/s -> km/h (major): stored numbers mean something else".</summary>
    public override string ToString() =>
        $"{Variable}, {Property}: {Before ?? "-"} -> {After ?? "-"} ({Identifiers.Word.Of(Weight)}): {Consequence}";
}
