using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Parquet.Serialization;
using SwingStudy.Storage.Tables;
using SwingStudy.Storage.Tables.Log;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

public sealed class CheckpointFileTests : IDisposable
{
    private readonly string _path = Path.Combine(Directory.CreateTempSubdirectory("swingstudy-checkpoint-").FullName, "c.parquet");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(_path)!, recursive: true);

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(3, 2, 1)]
    [InlineData(400, 150, 4)]
    public void AStateComesBackAsItWasWritten(int files, int removed, int applications)
    {
        var state = Snapshot.None(Some.Swings) with
        {
            Version = 7,
            TableId = "6f1c",
            CreatedMillis = 1_700_000_000_000,
            Files = Sorted(files, i => new DataFile(
                i % 3 == 0 ? $"none-{i}.parquet" : $"participant=P{i:00} é/part {i}.parquet", i % 3 == 0 ? null : $"P{i:00} é", $"unit {i}", 10 * i, i,
                $$$"""{"numRecords":{{{i}}}}""", 1_700_000_000_000 + i) { Originals = i % 2 == 0 ? "" : $"aa{i} bb{i}" }, file => file.Path),
            Removed = Sorted(removed, i => 1_600_000_000_000 + i, at => $"gone-{at}.parquet"),
            Applications = Sorted(applications, i => (long)i, number => $"application-{number}"),
        };
        var (content, actions) = CheckpointFile.Write(state);
        File.WriteAllBytes(_path, content);

        var back = CheckpointFile.Read(_path, 7);

        Assert.Equal(2 + files + removed + applications, actions);
        Assert.Equal((state.Version, state.TableId, state.CreatedMillis), (back.Version, back.TableId, back.CreatedMillis));
        Assert.Equal(state.Definition.Columns, back.Definition.Columns);
        Assert.Equal((state.Definition.Name, state.Definition.RowMeaning, state.Definition.PartitionColumn), (back.Definition.Name, back.Definition.RowMeaning, back.Definition.PartitionColumn));
        Assert.Equal(state.Files, back.Files);
        Assert.Equal(state.Removed, back.Removed);
        Assert.Equal(state.Applications, back.Applications);
    }

    [Fact]
    public async Task ACheckpointOfAnotherWriterThatLeavesColumnsOutIsRead()
    {
        ForeignRow[] rows =
        [
            new() { Metadata = new() { Id = "9a", Schema = SchemaText.Write(Some.Swings) } },
            new() { Add = new() { Path = "a%20b.parquet", Size = 5 } },
        ];
        await using (var stream = File.Create(_path))
            await ParquetSerializer.SerializeAsync(rows, stream, cancellationToken: TestContext.Current.CancellationToken);

        var state = CheckpointFile.Read(_path, 3);

        var file = Assert.Single(state.Files.Values);
        Assert.Equal(("a b.parquet", null, "", 5), (file.Path, file.Partition, file.Unit, file.Size));
        Assert.Equal(("9a", null), (state.TableId, state.Definition.PartitionColumn));
        Assert.Empty(state.Removed);
        Assert.Empty(state.Applications);
    }

    [Fact]
    public async Task ACheckpointThatAsksForANewerReaderOrHoldsNoColumnsIsRefused()
    {
        await using (var stream = File.Create(_path))
            await ParquetSerializer.SerializeAsync([new ForeignRow { Add = new() { Path = "a.parquet" } }], stream, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Contains("holds no columns", Assert.Throws<InvalidDataException>(() => CheckpointFile.Read(_path, 1)).Message, StringComparison.Ordinal);

        await using (var stream = File.Create(_path))
            await ParquetSerializer.SerializeAsync([new CheckpointRow { Protocol = new() { MinReaderVersion = 3 } }], stream, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Contains("3", Assert.Throws<InvalidDataException>(() => CheckpointFile.Read(_path, 1)).Message, StringComparison.Ordinal);
    }

    private static ImmutableSortedDictionary<string, T> Sorted<T>(int count, Func<int, T> value, Func<T, string> key) =>
        Enumerable.Range(0, count).Select(value).ToImmutableSortedDictionary(key, item => item, StringComparer.Ordinal);

    public sealed class ForeignRow
    {
        [JsonPropertyName("metaData")]
        public ForeignMetadata? Metadata { get; set; }

        [JsonPropertyName("add")]
        public ForeignAdd? Add { get; set; }
    }

    public sealed class ForeignMetadata
    {
        [JsonPropertyName("id")]
        public string? Id { get; set; }

        [JsonPropertyName("schemaString")]
        public string? Schema { get; set; }
    }

    public sealed class ForeignAdd
    {
        [JsonPropertyName("path")]
        public string? Path { get; set; }

        [JsonPropertyName("size")]
        public int Size { get; set; }
    }
}
