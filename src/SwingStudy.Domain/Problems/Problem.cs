namespace SwingStudy.Domain.Problems;

/// <summary>Something wrong with what a person or a device gave us: a problem with data is data.</summary>
/// <param name="Code">Stable kebab-case word that programs may rely on, such as <c>unit-unknown</c>; never reused for another meaning.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Found">What stands there, with the raw text where there is one.</param>
/// <param name="Expected">What would have been right.</param>
/// <param name="Mend">A command or an edit that the person can make.</param>
public sealed record Problem(string Code, Place Place, string Found, string Expected, string Mend)
{
    /// <summary>One line for people: place, what was found, what was expected, the mend.</summary>
    public override string ToString() => $"{Place}: {Found}; expected {Expected}. {Mend} [{Code}]";
}
