using System.Globalization;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Units;
using SwingStudy.Reporting.Figures;
using SwingStudy.Reporting.Rows;

namespace SwingStudy.Reporting.Documents;

/// <summary>The plan in words, and what the method words of the tables mean.</summary>
internal static class MethodsSection
{
    /// <summary>Writes the section.</summary>
    public static void Write(Html html, StudyReport report)
    {
        var protocol = report.Protocol;
        html.Markup("<section id=\"methods\">").Element("h2", "Methods")
            .Element("p", $"Design: {Word.Of(protocol.Design).Replace('-', ' ')}. {Chance(protocol)} {protocol.Blinding?.How}".TrimEnd());
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
            $"Intervals hold {100 * protocol.Analysis.Confidence:0.#} % confidence; resampling draws {protocol.Analysis.Resamples} times from seed {protocol.Analysis.Seed}; p values of several comparisons are adjusted by: {protocol.Analysis.Multiplicity.Replace('-', ' ')}. {protocol.Analysis.Why}"));
        html.Element("p", "Screening rules never see the phase. What they exclude stays in the tables and is drawn hollow in the figures.");
        html.Element("h3", "Verdicts").Markup("<dl>");
        Term(html, Verdict.Supported, "Planned before data. The interval excludes no change, so that the player's own noise does not explain it, also after adjustment for the planned comparisons of outcomes of the same role; it is worthwhile with the protocol's confidence; and nothing in the data offers another explanation.");
        Term(html, Verdict.Suggestive, "Something speaks for a change, but a condition of 'supported' is missing; the reasons say which.");
        Term(html, Verdict.NotShown, "The player's own noise could have made this. It does not say that nothing changed.");
        Term(html, Verdict.CannotTell, "The data cannot answer: a phase has no counted swing, or one session while nobody knows how much days differ, or all was struck on one day.");
        html.Markup("</dl>");
        Words(html, report);
        Reliability(html, report);
        html.Markup("</section>");
    }

    private static string Chance(Protocol protocol) => protocol.Randomization is { } draw
        ? string.Create(CultureInfo.InvariantCulture, $"What chance decided: {draw.Kind.Replace('-', ' ')}, drawn from seed {draw.Seed}.")
        : "Not randomized: nothing was left to chance.";

    private static string Worth(ValueDisplay display, double amount) => $"{ValueDisplay.Number(display.Difference(amount), display.Decimals)} {display.Symbol}".TrimEnd();

    private static void Words(Html html, StudyReport report)
    {
        var words = report.Tables.Effects.Select(row => row.Measure).Concat(report.Tables.Reliability.Select(row => row.Coefficient)).Concat(report.Tables.MethodWords)
            .Where(word => word.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (words.Count == 0)
            return;
        html.Element("h3", "Words of measures and methods, as they were run").Markup("<dl>");
        var notes = report.Methods.ToDictionary(note => note.Word, StringComparer.Ordinal);
        foreach (var word in words)
        {
            if (notes.GetValueOrDefault(word) is { } note)
                Term(html, word, $"{MethodWords.MeaningOf(word) ?? note.Title + "."} {note.What} {(note.Assumptions.Count > 0 ? $"Assumes: {string.Join(" ", note.Assumptions)}" : "")}".TrimEnd());
            else if (MethodWords.MeaningOf(word) is { } meaning)
                Term(html, word, meaning);
        }

        html.Markup("</dl>");
        var sources = report.Methods.Where(note => words.Contains(note.Word)).SelectMany(note => note.Sources).Distinct().Order(StringComparer.Ordinal).ToList();
        if (sources.Count > 0)
            html.Element("h3", "References").List(sources);
    }

    private static void Reliability(Html html, StudyReport report)
    {
        if (report.Tables.Reliability.Count == 0)
            return;
        html.OpenTable("Noise and reliability of the outcomes", "Outcome", "Level", "Coefficient", "#Estimate", "#Interval", "#Players", "Method");
        foreach (var row in report.Tables.Reliability)
        {
            var title = report.Dictionary.TryGet(row.Outcome, out var variable) ? variable.Title : row.Outcome;
            var symbol = row.Unit is { } code && code != "1" ? UnitCatalogue.ParseCode(code)?.Symbol ?? code : "";
            Func<double, string> number = value => ValueDisplay.Number(value, 2);
            if (variable?.Unit is { } unit && unit == row.Unit && unit != "1")
            {
                var display = new ValueDisplay(variable);
                number = value => ValueDisplay.Number(display.Difference(value), display.Decimals + 1);
                symbol = display.Symbol;
            }

            html.Markup("<tr>").Element("th", title, "scope=\"row\"").Element("td", row.Level).Element("td", row.Coefficient)
                .Element("td", row.Undefined ?? $"{number(row.Estimate)} {symbol}".TrimEnd(), row.Undefined is null ? "class=\"number\"" : "")
                .Element("td", double.IsFinite(row.Low) && double.IsFinite(row.High) ? $"{number(row.Low)} to {number(row.High)}" : "", "class=\"number\"")
                .Element("td", row.Players?.ToString(CultureInfo.InvariantCulture) ?? "", "class=\"number\"").Element("td", row.Method).Markup("</tr>");
        }

        html.CloseTable();
    }

    private static void Term(Html html, string word, string meaning) => html.Element("dt", word).Element("dd", meaning);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
