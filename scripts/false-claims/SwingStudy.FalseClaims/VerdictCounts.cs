using SwingStudy.Domain.Tables;

namespace SwingStudy.FalseClaims;

/// <summary>How often each verdict was given.</summary>
internal sealed class VerdictCounts
{
    private readonly Dictionary<string, int> _players = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _studies = new(StringComparer.Ordinal);

    public void Add(RowSet findings)
    {
        var (scopes, verdicts) = (findings.Texts("scope"), findings.Texts("verdict"));
        for (var i = 0; i < findings.Count; i++)
        {
            var counts = scopes[i] == "player" ? _players : _studies;
            counts[verdicts[i]!] = counts.GetValueOrDefault(verdicts[i]!) + 1;
        }
    }

    /// <summary>Contrasts of players.</summary>
    public int Contrasts => _players.Values.Sum();

    /// <summary>Share of players' contrasts with one of the verdicts.</summary>
    public double Players(params ReadOnlySpan<string> verdicts) => Share(_players, verdicts);

    /// <summary>Share of the studies' contrasts with the verdict.</summary>
    public double Studies(string verdict) => Share(_studies, [verdict]);

    private static double Share(Dictionary<string, int> counts, ReadOnlySpan<string> verdicts)
    {
        var sum = 0;
        foreach (var verdict in verdicts)
            sum += counts.GetValueOrDefault(verdict);
        return counts.Count == 0 ? 0 : (double)sum / counts.Values.Sum();
    }
}
