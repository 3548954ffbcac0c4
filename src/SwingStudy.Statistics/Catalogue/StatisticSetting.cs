using System.Globalization;

namespace SwingStudy.Statistics.Catalogue;

/// <summary>A number that a statistic takes beside the table and the confidence.</summary>
/// <param name="Name">The name, kebab-case, such as <c>smallest-worthwhile</c>.</param>
/// <param name="What">What it does, with its unit.</param>
/// <param name="Default">Taken when it is not given; null when there is none.</param>
/// <param name="Least">Smallest number allowed.</param>
/// <param name="Most">Largest number allowed.</param>
/// <param name="IsWhole">Whether it is a whole number.</param>
public sealed record StatisticSetting(
    string Name, string What, double? Default = null, double Least = -1e75, double Most = 1e75, bool IsWhole = false)
{
    /// <summary>A number that makes sense, for a setting that must be given; null when it may be left out.</summary>
    public double? Example { get; init; }

    /// <summary>Whether it must be given.</summary>
    public bool IsNeeded => Example is not null;

    /// <summary>What is wrong with the given settings as far as this one goes; null when nothing.</summary>
    public string? Fault(IReadOnlyDictionary<string, double> given)
    {
        if (!given.TryGetValue(Name, out var number))
            return IsNeeded ? string.Create(CultureInfo.InvariantCulture, $"needs the setting '{Name}' ({What}), for instance {Name}={Example}") : null;
        var fits = number >= Least && number <= Most && (!IsWhole || number == Math.Floor(number));
        return fits ? null : string.Create(
            CultureInfo.InvariantCulture, $"'{Name}' is a {(IsWhole ? "whole " : "")}number from {Least} to {Most}; got {number}");
    }

    /// <summary>The setting in one line for people.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Name}: {What} ({(IsNeeded ? "needed" : Default is { } number ? $"default {number}" : "may be left out")})");
}
