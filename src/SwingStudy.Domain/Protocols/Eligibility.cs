namespace SwingStudy.Domain.Protocols;

/// <summary>Who may take part.</summary>
/// <param name="MinimumAge">Youngest age in years; null: none.</param>
/// <param name="MinorsAllowed">Whether minors may take part, with guardian's consent and own assent.</param>
/// <param name="AgeOfMajority">Age of majority where the study runs: set by local law.</param>
/// <param name="Criteria">Further criteria in words.</param>
public sealed record Eligibility(int? MinimumAge, bool MinorsAllowed, int AgeOfMajority, IReadOnlyList<string> Criteria)
{
    /// <summary>Values that a variable of the participant level must have, such as <c>handedness</c>: <c>right</c>.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Requires { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>Reason for the limits of age.</summary>
    public string Why { get; init; } = "";
}
