namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Verdicts as tables and people say them.</summary>
internal static class VerdictWords
{
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Supported => "supported",
        Verdict.Suggestive => "suggestive",
        Verdict.NotShown => "not shown",
        Verdict.CannotTell => "cannot tell",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Unknown verdict."),
    };
}
