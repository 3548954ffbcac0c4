using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>Verdicts on pages: a sign that figures share, a style, and words for readers without statistics.</summary>
internal static class VerdictMark
{
    /// <summary>Class of the style sheet.</summary>
    public static string ClassOf(string verdict) => Verdict.All.Contains(verdict) ? verdict.Replace(' ', '-') : "";

    /// <summary>The sign that figures give the verdict.</summary>
    public static string Sign(string verdict) => verdict switch
    {
        Verdict.Supported => Drawn("<circle cx=\"8\" cy=\"8\" r=\"7\" fill=\"currentColor\"/>"),
        Verdict.Suggestive => Drawn("<path d=\"M8 0l8 8-8 8-8-8z\" fill=\"currentColor\"/>"),
        Verdict.NotShown => Drawn("<path d=\"M2 2h12v12H2z\" fill=\"currentColor\"/>"),
        Verdict.CannotTell => Drawn("<path d=\"M8 2l6.5 12h-13z\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2\"/>"),
        _ => "",
    };

    /// <summary>The answer to "is it real?".</summary>
    public static string Answer(string verdict) => verdict switch
    {
        Verdict.Supported => "Yes, as far as these data can say",
        Verdict.Suggestive => "Perhaps: something speaks for it, and something stands in the way",
        Verdict.NotShown => "The player's own ups and downs could have made this",
        Verdict.CannotTell => "These data cannot answer, whatever the numbers look like",
        _ => verdict,
    };

    /// <summary>Sign and word.</summary>
    public static string Markup(string verdict) => $"<span class=\"verdict {ClassOf(verdict)}\">{Sign(verdict)}{Html.Escape(verdict)}</span>";

    private static string Drawn(string shape) => $"<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\">{shape}</svg>";
}
