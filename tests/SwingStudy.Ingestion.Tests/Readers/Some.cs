using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Readers;

/// <summary>Small builders: a case shows only what matters to it.</summary>
internal static class Some
{
    public static SourceMapping Mapping(ReaderKind reader = ReaderKind.Delimited, params string[] columns) => new()
    {
        Source = "strike",
        Title = "Strike sensor",
        Device = "bay1-strike",
        Rows = RowMeaning.Swings,
        Reader = reader,
        Files = ".*",
        Time = new TimeRule { Parts = [new FieldSource { Column = columns.Length > 0 ? columns[0] : "When" }] },
        Values = columns.Skip(1).Select((column, i) => (column, i)).ToDictionary(pair => $"value_{pair.i}", pair => new FieldSource { Column = pair.column }),
        File = "sources/strike.yaml",
        Hash = Sha256.Of("a mapping"),
    };

    public static SourceMapping Mapping(params string[] columns) => Mapping(ReaderKind.Delimited, columns);

    public static Outcome<RecordDocument> Open(byte[] bytes, SourceMapping mapping) =>
        RecordReaders.Open(new MemoryStream(bytes), "export.csv", mapping);

    public static Outcome<RecordDocument> Open(string text, SourceMapping mapping) => Open(Encoding.UTF8.GetBytes(text), mapping);

    public static Contents Read(string text, SourceMapping mapping) => Read(Open(text, mapping));

    public static Contents Read(byte[] bytes, SourceMapping mapping) => Read(Open(bytes, mapping));

    public static Contents Read(Outcome<RecordDocument> outcome)
    {
        Assert.True(outcome.Succeeded(out var document), string.Join('\n', outcome.Problems));
        return Contents.Of(document);
    }

    public static Problem Held(Outcome<RecordDocument> outcome, string code)
    {
        Assert.False(outcome.Succeeded(out _));
        return Assert.Single(outcome.Problems, problem => problem.Code == code);
    }
}
