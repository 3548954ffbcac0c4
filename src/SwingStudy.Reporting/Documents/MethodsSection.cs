using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The plan in words, and what the method words of the tables mean.</summary>
internal static class MethodsSection
{
    /// <summary>Writes what stands in the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var protocol = report.Protocol;
        html.Element("p", $"Design: {Word.Of(protocol.Design).Replace('-', ' ')}. {Chance(protocol)} {(protocol.Blinding is { } blinding ? Sentence.Of(blinding.How) : "")}".TrimEnd());
        html.OpenTable("Phases", "Phase", "#Least sessions", "#Least swings a session", "Cue", "Why");
        foreach (var phase in protocol.Phases)
        {
            html.Markup("<tr>").Element("th", phase.Name.Replace('-', ' '), "scope=\"row\"").Element("td", Count(phase.MinimumSessions), "class=\"number\"")
                .Element("td", Count(phase.MinimumSwings), "class=\"number\"").Element("td", phase.Cue ?? "none").Element("td", phase.Why).Markup("</tr>");
        }

        html.CloseTable().OpenTable("Outcomes", "Outcome", "Role", "#Smallest worthwhile change", "Why that");
        foreach (var outcome in protocol.Outcomes)
        {
            var variable = report.Dictionary[outcome.Variable];
            var worth = outcome.SmallestWorthwhile is { } smallest ? Worth(new ValueDisplay(variable), smallest.Amount) : "none stated";
            html.Markup("<tr>").Element("th", variable.Title, "scope=\"row\"").Element("td", Word.Of(outcome.Role)).Element("td", worth, "class=\"number\"")
                .Element("td", outcome.SmallestWorthwhile?.Reason ?? "").Markup("</tr>");
        }

        html.CloseTable().Element("p", string.Create(
            CultureInfo.InvariantCulture,
            $"Intervals hold {100 * protocol.Analysis.Confidence:0.#} % confidence; resampling draws {protocol.Analysis.Resamples} times from seed {protocol.Analysis.Seed}; p values of several comparisons are adjusted by the method '{protocol.Analysis.Multiplicity.Replace('-', ' ')}'. {protocol.Analysis.Why}"));
        html.Element("p", "Screening rules never see the phase. What they exclude stays in the tables and is drawn hollow in the figures.");
        html.Element("h3", "How a change is judged")
            .Element("p", "A player's change is the mean of the session means after minus the mean of those before: a session counts as one point, however many swings it holds. Its error has two floors, the scatter from swing to swing and the scatter from session to session, estimated within phases from the player's own sessions and, where these are few, from those of all players; its interval is that of Student's t with Satterthwaite's degrees of freedom. A change counts as more than noise when that interval excludes zero.")
            .Markup("<p>What the verdicts mean stands <a href=\"#verdicts\">beside the answer</a>. How often they err is simulated: see <a href=\"#limits\">limits</a>.</p>");
        Words(html, report);
    }

    /// <summary>What chance decided.</summary>
    public static string Chance(Protocol protocol) => protocol.Randomization is { } draw
        ? string.Create(CultureInfo.InvariantCulture, $"What chance decided: {draw.Kind.Replace('-', ' ')}, drawn from seed {draw.Seed}.")
        : "Not randomized: nothing was left to chance.";

    private static string Worth(ValueDisplay display, double amount) => ValueDisplay.WithUnit(ValueDisplay.Number(display.Difference(amount), display.Decimals), display.Symbol);

    private static void Words(Html html, StudyReport report)
    {
        var words = report.Tables.Effects.Select(row => row.Measure).Concat(report.Tables.Reliability.Select(row => row.Coefficient)).Concat(report.Tables.MethodWords)
            .Where(word => word.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (words.Count == 0)
            return;
        html.Folded("Words of measures and methods, as they were run", inside => Terms(inside, report, words));
        var sources = report.Methods.Where(note => words.Contains(note.Word)).SelectMany(note => note.Sources).Distinct().Order(StringComparer.Ordinal).ToList();
        if (sources.Count > 0)
            html.Element("h3", "References").List(sources);
    }

    private static void Terms(Html html, StudyReport report, List<string> words)
    {
        html.Markup("<dl>");
        var notes = report.Methods.ToDictionary(note => note.Word, StringComparer.Ordinal);
        foreach (var word in words)
        {
            if (notes.GetValueOrDefault(word) is { } note)
                Term(html, word, $"{MethodWords.MeaningOf(word) ?? note.Title + "."} {note.What} {(note.Assumptions.Count > 0 ? $"Assumes: {string.Join(" ", note.Assumptions)}" : "")}".TrimEnd());
            else if (MethodWords.MeaningOf(word) is { } meaning)
                Term(html, word, meaning);
        }

        html.Markup("</dl>");
    }

    private static void Term(Html html, string word, string meaning) => html.Element("dt", word).Element("dd", meaning);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
