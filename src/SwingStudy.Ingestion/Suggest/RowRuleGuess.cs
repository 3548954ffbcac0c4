using System.Text.RegularExpressions;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Suggest;

/// <summary>Finds rows that are no data, practice swings, tokens for nothing, and a player named above the rows.</summary>
internal static class RowRuleGuess
{
    /// <summary>Sets these parts of the draft.</summary>
    public static void Find(RecordDocument document, FileProfile file, Draft draft)
    {
        if (file.Footers.Count > 0)
        {
            draft.Mapping = draft.Mapping with { NotData = [new RowRule("summary", [new CellCondition(null, file.Footers, null, null)])] };
            draft.Say("not_data", string.Join(", ", file.Footers), 0.9, "rows that begin with these words sum up others");
        }

        foreach (var column in file.Columns)
        {
            var words = column.Texts.Keys.Where(RoleWords.IsPractice).Order(StringComparer.Ordinal).ToList();
            if (words.Count == 0)
                continue;
            draft.Mapping = draft.Mapping with { Practice = [.. draft.Mapping.Practice, new RowRule("practice", [new CellCondition(column.Heading.Name, words, null, null)])] };
            draft.Say("practice", $"{column.Heading.Name}: {string.Join(", ", words)}", 0.8, "cells that mark practice swings");
        }

        var tokens = file.Columns.Where(column => column.IsNumeric).SelectMany(column => column.Texts.Keys).Where(RoleWords.IsMissing)
            .Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal).ToList();
        if (tokens.Count > 0)
        {
            draft.Mapping = draft.Mapping with { Missing = tokens };
            draft.Say("missing", string.Join(", ", tokens), 0.95, "usual tokens for nothing among numbers");
        }

        if (draft.Mapping.Participant is null)
            FindPlayerAbove(document, draft);
    }

    /// <summary>The last part of a dotted name, as documents of nested objects have: <c>meta.player</c>.</summary>
    private static string LastName(string key) => key[(key.TrimEnd('.').LastIndexOf('.') + 1)..];

    private static void FindPlayerAbove(RecordDocument document, Draft draft)
    {
        foreach (var line in document.Preamble)
        {
            var at = line.Text.AsSpan().IndexOfAny(":=;\t");
            if (at <= 0 || RoleWords.Likeness(HeadingWords.Of(LastName(line.Text[..at])), ColumnRole.Participant) < 0.95 || line.Text[(at + 1)..].Trim().Length == 0)
                continue;
            var pattern = $@"^\W*{Regex.Escape(line.Text[..at].Trim('"', ' ', '\uFEFF'))}\W*(?<value>[^;,\t""]+)";
            draft.Mapping = draft.Mapping with { Participant = new FieldSource { Preamble = pattern } };
            draft.Say("participant", pattern, 0.8, $"line {line.Line} above the headings names a person");
            return;
        }

        draft.Say("participant", "", 0.3, "no column and no line above the headings names a person");
    }
}
