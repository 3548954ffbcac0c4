namespace SwingStudy.Ingestion.Suggest;

/// <summary>What the short side names of a file stand for, judged by all of them together.</summary>
internal static class SideGuess
{
    /// <summary>Lead and trail, or left and right, for each name in use, and how sure that is.</summary>
    public static (IReadOnlyDictionary<string, string> Meaning, double Confidence, string Reason) Of(IReadOnlyCollection<string?> names)
    {
        if (names.Contains("1") || names.Contains("2"))
            return (new Dictionary<string, string> { ["1"] = "trail", ["2"] = "lead" }, 0.2, "a guess: nothing says which foot stands on which plate");
        if (names.All(name => name is null))
            return (new Dictionary<string, string>(), 0.2, "a guess: one plate and no side, so both feet are taken to stand on it");
        var isLead = names.Contains("trail") || names.Contains("lead");
        return (new Dictionary<string, string> { ["lead"] = "lead", ["trail"] = "trail", ["left"] = "left", ["right"] = "right", ["l"] = isLead ? "lead" : "left" }, 0.8,
            isLead ? "lead and trail by their names" : "left and right by their names; handedness decides which leads");
    }
}
