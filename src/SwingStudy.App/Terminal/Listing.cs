using Spectre.Console;

namespace SwingStudy.App.Terminal;

/// <summary>Plain tables of text for the terminal.</summary>
internal static class Listing
{
    /// <summary>Writes rows under headings; says so when there are none.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows, string whenEmpty)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (var heading in headings)
            table.AddColumn(new TableColumn(Markup.Escape(heading)));
        foreach (var row in rows)
            table.AddRow([.. row.Select(cell => new Markup(Markup.Escape(cell)))]);
        if (table.Rows.Count == 0)
            console.WriteLine(whenEmpty);
        else
            console.Write(table);
    }
}
