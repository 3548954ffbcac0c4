using SwingStudy.Domain.Tables;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>Estimates that earlier stages wrote, by their keys. Tables hold no infinity: an open limit is missing.</summary>
internal sealed class EstimateLookup
{
    private readonly Dictionary<(string Participant, string Outcome, string Contrast, string Name), FoundEstimate> _rows = [];

    /// <summary>Takes rows of <c>effects</c> (by measure) or <c>trends</c> (by term).</summary>
    public EstimateLookup(RowSet rows, string nameColumn)
    {
        var (participants, outcomes, contrasts, names) = (rows.Texts("participant"), rows.Texts("outcome"), rows.Texts("contrast"), rows.Texts(nameColumn));
        var (estimates, errors, lows, highs, p) = (rows.Numbers("estimate"), rows.Numbers("se"), rows.Numbers("ci_low"), rows.Numbers("ci_high"), rows.Numbers("p"));
        for (var i = 0; i < rows.Count; i++)
        {
            if (!double.IsNaN(estimates[i]))
                _rows[(participants[i]!, outcomes[i]!, contrasts[i]!, names[i]!)] = new FoundEstimate(estimates[i], errors[i], lows[i], highs[i], p[i]);
        }
    }

    /// <summary>The estimate of that name; null when there is none.</summary>
    public FoundEstimate? Find(string participant, string outcome, string contrast, string name) =>
        _rows.TryGetValue((participant, outcome, contrast, name), out var found) ? found : null;
}
