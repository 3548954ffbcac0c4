using System.Runtime.CompilerServices;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The columns that a mapping addresses.</summary>
internal static class MappedColumns
{
    private static readonly ConditionalWeakTable<SourceMapping, string[]> Found = [];

    /// <summary>Headings that the mapping reads, each once; those it ignores are not among them. They are found once for all of its files.</summary>
    public static IReadOnlyList<string> Of(SourceMapping mapping) => Found.GetValue(mapping, Read);

    /// <summary>Columns whose numbers tell the decimal sign of the file: those of values without a sign of their own.</summary>
    public static IReadOnlyList<string> WithNumbers(SourceMapping mapping)
    {
        IEnumerable<string?> columns = mapping.LongForm is { } form
            ? [form.ValueColumn]
            : mapping.Values.Values.Concat(Samples(mapping)).Where(value => value.Decimal is null).Select(value => value.Column);
        return [.. columns.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    private static string[] Read(SourceMapping mapping)
    {
        IEnumerable<string?> columns =
        [
            mapping.Participant?.Column,
            .. mapping.Time.Parts.Select(part => part.Column),
            mapping.Sequence?.Column,
            mapping.Phase?.Column,
            mapping.LongForm?.NameColumn,
            mapping.LongForm?.ValueColumn,
            mapping.LongForm?.UnitColumn,
            .. mapping.LongForm is null ? mapping.Values.Values.Select(value => value.Column) : [],
            .. Samples(mapping).Select(field => field.Column),
            mapping.Recording?.Trial?.Column,
            mapping.Recording?.Trigger?.Column,
            mapping.Recording?.Handedness?.Column,
            mapping.Recording?.Cut?.Column,
            .. mapping.NotData.Concat(mapping.Practice).SelectMany(rule => rule.Conditions).Select(condition => condition.Column),
        ];
        return [.. columns.OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>Columns of samples and their clock. Where recordings stand side by side their headings have numbers before them.</summary>
    private static IEnumerable<FieldSource> Samples(SourceMapping mapping) => mapping.Recording is not { } rule
        ? []
        : (rule.Form == RecordingForm.Wide ? [] : NamedChannel.Of(mapping).Select(named => named.Field)).Concat(rule.Clock is { } clock ? [clock] : []);
}
