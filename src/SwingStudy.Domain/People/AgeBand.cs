using System.Globalization;

namespace SwingStudy.Domain.People;

/// <summary>A band of age as the dictionary's <c>age_band</c> words it: the date of birth is never stored.</summary>
/// <param name="From">Youngest age of the band in years.</param>
/// <param name="To">Oldest age of the band in years; null: no limit.</param>
public readonly record struct AgeBand(int From, int? To)
{
    /// <summary>Reads <c>under-12</c>, <c>16-17</c> or <c>75-and-over</c>; null for anything else.</summary>
    public static AgeBand? Read(string? text)
    {
        if (text is null)
            return null;
        if (text.StartsWith("under-", StringComparison.Ordinal) && Years(text["under-".Length..]) is { } below)
            return new AgeBand(0, below - 1);
        if (text.EndsWith("-and-over", StringComparison.Ordinal) && Years(text[..^"-and-over".Length]) is { } over)
            return new AgeBand(over, null);
        return text.Split('-') is [var from, var to] && Years(from) is { } low && Years(to) is { } high ? new AgeBand(low, high) : null;
    }

    /// <summary>Whether somebody of this band may be below an age: a band that straddles it counts as below.</summary>
    public bool MayBeBelow(int years) => From < years;

    /// <summary>Whether everybody of this band is below an age.</summary>
    public bool IsBelow(int years) => To < years;

    private static int? Years(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var years) ? years : null;
}
