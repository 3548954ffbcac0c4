using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Support;

/// <summary>Texts mapped as if they were files.</summary>
internal static class Mapped
{
    public static MappedFile File(string text, SourceMapping mapping, AmbiguousChoice? choice = null, string name = "test.csv", int threads = 2)
    {
        var outcome = Try(text, mapping, choice, name, threads);
        Assert.True(outcome.Succeeded(out var file), string.Join(Environment.NewLine, outcome.Problems));
        Assert.True(file.Counts.Balances, $"{file.Counts}");
        return file;
    }

    public static IReadOnlyList<Problem> Problems(string text, SourceMapping mapping, string name = "test.csv")
    {
        var outcome = Try(text, mapping, null, name, 2);
        Assert.NotEmpty(outcome.Problems);
        return outcome.Problems;
    }

    public static double[] Numbers(this MappedFile file, string variable)
    {
        var column = file.Plan.Numbers.ToList().FindIndex(candidate => candidate.Variable.Name == variable);
        return [.. Enumerable.Range(0, file.Count).Select(row => file.Number(column, row))];
    }

    public static string?[] Texts(this MappedFile file, string variable)
    {
        var column = file.Plan.Texts.ToList().FindIndex(candidate => candidate.Variable.Name == variable);
        return [.. Enumerable.Range(0, file.Count).Select(row => file.Text(column, row))];
    }

    public static long[] Sequences(this MappedFile file) => [.. Enumerable.Range(0, file.Count).Select(file.Sequence)];

    public static string[] Times(this MappedFile file) =>
        [.. file.RecordedAt.Select(millis => DateTimeOffset.FromUnixTimeMilliseconds(millis).ToString("yyyy-MM-ddTHH:mm:ss", System.Globalization.CultureInfo.InvariantCulture))];

    private static Outcome<MappedFile> Try(string text, SourceMapping mapping, AmbiguousChoice? choice, string name, int threads)
    {
        var opened = RecordReaders.Open(Some.Stream(text), name, mapping);
        if (!opened.Succeeded(out var document))
            return Outcome<MappedFile>.Failed(opened.Problems);
        using (document)
        {
            var match = new System.Text.RegularExpressions.Regex(mapping.Files).Match(name);
            return new FileMapper(mapping, Some.Dictionary, threads).Map(document, match, choice);
        }
    }
}
