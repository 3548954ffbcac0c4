using SwingStudy.Reporting.Rows;
using SwingStudy.Statistics.Catalogue;

namespace SwingStudy.App.Studies;

/// <summary>What the catalogue of statistics says of the methods that were run: reports cannot see it themselves.</summary>
internal static class MethodNotes
{
    /// <summary>One note a method word of the tables that the catalogue knows.</summary>
    public static IReadOnlyList<MethodNote> Of(ReportTables tables) =>
    [
        .. tables.MethodWords.Select(StatisticCatalogue.Find).OfType<StatisticDefinition>()
            .Select(entry => new MethodNote(entry.Name, entry.Title, entry.What, entry.Assumptions, [.. entry.CitationKeys.Select(Citations.Get)])),
    ];
}
