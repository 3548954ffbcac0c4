using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Link;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Studies;

/// <summary>What linking left open, with the evidence: captures that wait for a person, clocks that were not made, and what devices missed or recorded falsely.</summary>
/// <param name="Unlinked">Captures without a swing, by the reason.</param>
/// <param name="Waiting">Captures whose swing a person has to decide.</param>
/// <param name="Clocks">Clocks of devices that were not made, and those of devices with missed swings or records of none.</param>
internal sealed record LinkReview(IReadOnlyDictionary<string, int> Unlinked, IReadOnlyList<OpenMatch> Waiting, IReadOnlyList<ReviewedClock> Clocks)
{
    /// <summary>Reads links and clocks as they now are.</summary>
    public static LinkReview Of(TableStore tables)
    {
        var unlinked = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var (swingOf, open) = (new Dictionary<string, string>(StringComparer.Ordinal), new List<OpenMatch>());
        foreach (var rows in Existing(tables, StudyTables.Links))
        {
            var (captures, swings, methods) = (rows.Texts("capture_id"), rows.Texts("swing_id"), rows.Texts("method"));
            for (var row = 0; row < rows.Count; row++)
            {
                if (swings[row] is { } swing)
                    swingOf[captures[row]!] = swing;
                else if (!LinkMethods.IsOfSession(methods[row]))
                    unlinked[methods[row] ?? ""] = unlinked.GetValueOrDefault(methods[row] ?? "") + 1;
                if (LinkMethods.WaitsForDecision(methods[row]))
                {
                    open.Add(new OpenMatch(captures[row]!, methods[row]!, rows.Texts("session")[row], rows.Texts("candidate")[row], null,
                        Known(rows.Numbers("residual_s")[row]), Known(rows.Numbers("confidence")[row])));
                }
            }
        }

        return new LinkReview(unlinked,
            [.. open.Select(match => match with { Swing = match.Candidate is { } with ? swingOf.GetValueOrDefault(with) : null }).OrderBy(match => match.Capture, StringComparer.Ordinal)],
            [.. Existing(tables, StudyTables.Clocks).SelectMany(ReviewedClock.Of).Where(clock => clock.NeedsLook)
                .OrderBy(clock => clock.Session, StringComparer.Ordinal).ThenBy(clock => clock.Source, StringComparer.Ordinal).ThenBy(clock => clock.Device, StringComparer.Ordinal)]);
    }

    private static IEnumerable<RowSet> Existing(TableStore tables, TableDefinition definition)
    {
        var table = tables.Table(definition);
        return table.CurrentVersion < 0 ? [] : table.Read();
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
