using System.Text.Json;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tables;

namespace SwingStudy.Pipeline.Running;

/// <summary>Whether a file holds numbers, by the statistics in the table's log.</summary>
internal static class FileValues
{
    /// <summary>Whether any number that is read may stand in a row of a file. Without statistics it may; so it does where no number is read.</summary>
    /// <param name="file">The file.</param>
    /// <param name="read">The table with the columns that are read.</param>
    public static bool MayHold(DataFile file, TableDefinition read)
    {
        if (file.Statistics.Length == 0)
            return true;
        using var document = JsonDocument.Parse(file.Statistics);
        var hasGaps = document.RootElement.TryGetProperty("nullCount", out var gaps);
        var numbers = read.Columns.Where(column => column.Kind is ColumnKind.Number or ColumnKind.Integer).ToList();
        return numbers.Count == 0 || !hasGaps || numbers.Exists(column => !gaps.TryGetProperty(column.Name, out var missing) || missing.GetInt64() < file.Rows);
    }
}
