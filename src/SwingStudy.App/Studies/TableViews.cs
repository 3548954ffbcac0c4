using System.Globalization;
using System.Text.RegularExpressions;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Query;

namespace SwingStudy.App.Studies;

/// <summary>Offers the tables of a study to SQL.</summary>
internal static partial class TableViews
{
    /// <summary>The newest version of each table, and the versions that the statement names as <c>"table@N"</c>.</summary>
    public static IReadOnlyList<QueryView> For(OpenedStudy study, string sql)
    {
        var views = new List<QueryView>();
        foreach (var name in study.Tables.Names())
        {
            var table = study.Tables.Existing(name)!;
            views.Add(new QueryView(name, table.DefinitionAt(), [.. table.Files().Select(table.FullPath)]) { Replaced = Replaced(study, table.DefinitionAt()) });
            foreach (var version in Named(sql, name).Where(version => version >= table.OldestVersion && version <= table.CurrentVersion))
            {
                views.Add(new QueryView(string.Create(CultureInfo.InvariantCulture, $"{name}@{version}"), table.DefinitionAt(version),
                    [.. table.Files(version).Select(table.FullPath)]) { Replaced = Replaced(study, table.DefinitionAt(version)) });
            }
        }

        return views;
    }

    private static IReadOnlyDictionary<string, string> Replaced(OpenedStudy study, TableDefinition table) => study.Mask?.Sql(table) ?? new Dictionary<string, string>();

    private static IEnumerable<long> Named(string sql, string table) => VersionedName().Matches(sql)
        .Where(match => match.Groups["table"].Value == table)
        .Select(match => long.Parse(match.Groups["version"].ValueSpan, CultureInfo.InvariantCulture))
        .Distinct();

    [GeneratedRegex("\"(?<table>[a-z_]+)@(?<version>[0-9]{1,18})\"", RegexOptions.NonBacktracking)]
    private static partial Regex VersionedName();
}
