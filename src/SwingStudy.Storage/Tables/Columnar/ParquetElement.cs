using Parquet.Meta;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>One element of a Parquet schema.</summary>
/// <param name="Name">Name.</param>
/// <param name="Type">Physical type; null for what holds other elements.</param>
/// <param name="Repetition">Whether it may be missing or repeats; null for the root.</param>
/// <param name="Children">Elements that follow and belong to it.</param>
/// <param name="Converted">The older form of the logical type.</param>
/// <param name="Logical">Logical type.</param>
internal sealed record ParquetElement(
    string Name, Parquet.Meta.Type? Type, FieldRepetitionType? Repetition, int Children = 0, ConvertedType? Converted = null, LogicalKind Logical = LogicalKind.None);
