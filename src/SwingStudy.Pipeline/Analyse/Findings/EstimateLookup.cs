using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Estimates that earlier stages wrote, by their keys. Tables hold no infinity: an open limit is missing.</summary>
internal sealed class EstimateLookup
{
    private readonly Dictionary<(string Participant, string Outcome, string Contrast, string Name), FoundEstimate> _rows = [];
    private readonly Dictionary<(string Participant, string Outcome, string Contrast, string Name), string> _undefined = [];

    /// <summary>Takes rows of <c>effects</c> (by measure) or <c>trends</c> (by term).</summary>
    public EstimateLookup(RowSet rows, string nameColumn)
    {
        var (participants, outcomes, contrasts, names) = (rows.Texts("participant"), rows.Texts("outcome"), rows.Texts("contrast"), rows.Texts(nameColumn));
        var (estimates, errors, lows, highs, p) = (rows.Numbers("estimate"), rows.Numbers("se"), rows.Numbers("ci_low"), rows.Numbers("ci_high"), rows.Numbers("p"));
        var (methods, undefined) = (rows.Texts("method"), rows.Texts("undefined"));
        for (var i = 0; i < rows.Count; i++)
        {
            var key = (participants[i]!, outcomes[i]!, contrasts[i]!, names[i]!);
            if (!double.IsNaN(estimates[i]))
                _rows[key] = new FoundEstimate(estimates[i], errors[i], lows[i], highs[i], p[i], methods[i] ?? "");
            else if (undefined[i] is { } reason)
                _undefined[key] = reason;
        }
    }

    /// <summary>The estimate of that name; null when there is none.</summary>
    public FoundEstimate? Find(string participant, string outcome, string contrast, string name) =>
        _rows.TryGetValue((participant, outcome, contrast, name), out var found) ? found : null;

    /// <summary>Why there is no estimate of that name; null when there is one, or nobody asked for it.</summary>
    public string? WhyNot(string participant, string outcome, string contrast, string name) => _undefined.GetValueOrDefault((participant, outcome, contrast, name));
}
