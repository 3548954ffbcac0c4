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
        Verdict.Supported => "Yes: the change is real, as far as these data can tell",
        Verdict.Suggestive => "Perhaps: something speaks for a real change, but not enough to rely on it",
        Verdict.NotShown => "Not shown: the player's usual ups and downs could have made this",
        Verdict.CannotTell => "Nobody can tell from these data, whatever the numbers look like",
        _ => verdict,
    };

    /// <summary>Writes what each verdict means.</summary>
    public static void Meanings(Html html)
    {
        html.Markup("<dl id=\"verdicts\">");
        Term(html, Verdict.Supported, "The comparison was planned before data. The interval of the change excludes zero, so that the player's own noise does not explain it, also after adjustment for the planned comparisons of outcomes of the same role; the change is worthwhile with the protocol's confidence, where a worthwhile size is stated; and nothing in the data offers another explanation.");
        Term(html, Verdict.Suggestive, "Something speaks for a change, but a condition of 'supported' is missing; the reasons say which.");
        Term(html, Verdict.NotShown, "The player's own noise could have made this. It does not say that nothing changed.");
        Term(html, Verdict.CannotTell, "The data cannot answer: a phase has no swing that counts, or one session while nobody knows how much days differ, or all was struck on one day.");
        html.Markup("</dl>").Element("p", "'Not measured' is no verdict: the player had no device that delivers the outcome, and counts neither for nor against.");
    }

    /// <summary>Sign and word.</summary>
    public static string Markup(string verdict) => $"<span class=\"verdict {ClassOf(verdict)}\">{Sign(verdict)}{Html.Escape(verdict)}</span>";

    private static void Term(Html html, string verdict, string meaning) => html.Markup($"<dt>{Markup(verdict)}</dt>").Element("dd", meaning);

    private static string Drawn(string shape) => $"<svg viewBox=\"0 0 16 16\" aria-hidden=\"true\">{shape}</svg>";
}
