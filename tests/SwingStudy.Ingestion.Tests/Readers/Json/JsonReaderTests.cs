using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Tests.Readers.Delimited;

namespace SwingStudy.Ingestion.Tests.Readers.Json;

public sealed class JsonReaderTests
{
    [Fact]
    public void NestedKeysBecomeDottedHeadingsAndNumbersKeepTheirText()
    {
        var mapping = Some.Mapping(ReaderKind.Json, "at", "club.speed", "ball.speed") with { Layout = new Layout { Records = "session.shots" } };
        var contents = Some.Read(
            """
            {"academy":"invented","session":{"shots":[
              {"at":"2026-05-01T10:00:00Z","club":{"speed":41.50,"name":"iron"},"ok":true},
              {"at":"2026-05-01T10:01:00Z","club":{"speed":1.5e1},"ball":{"speed":null},"marks":[1, 2]}
            ]}}
            """,
            mapping);
        Assert.Equal(["at", "club.speed", "club.name", "ok", "ball.speed", "marks"], contents.Names);
        Assert.Equal(["2026-05-01T10:00:00Z", "41.50", "iron", "true", "", ""], contents.Rows[0]);
        Assert.Equal([CellKind.Text, CellKind.Number, CellKind.Text, CellKind.Boolean, CellKind.Empty, CellKind.Empty], contents.Kinds[0]);
        Assert.Equal(["2026-05-01T10:01:00Z", "1.5e1", "", "", "", "[1, 2]"], contents.Rows[1]);
        Assert.Equal((CellKind.Error, 15.0), (contents.Kinds[1][5], contents.Numbers[1][1]));
        Assert.Equal([1, 2], contents.Lines);
        Assert.StartsWith("{\"at\":\"2026-05-01T10:00:00Z\"", contents.Raw[0], StringComparison.Ordinal);
    }

    [Fact]
    public void RecordsWithinRecordsCarryWhatStandsAroundThem()
    {
        var mapping = Some.Mapping(ReaderKind.Json, "no", "sessions.player") with { Layout = new Layout { Records = "sessions.shots" } };
        var contents = Some.Read(
            """{"station":"north","sessions":[{"player":"Ada","place":{"bay":2},"shots":[{"no":1},{"no":2}]},{"player":"Bo","shots":[]},{"player":"Cy","shots":[{"no":1}]}]}""",
            mapping);
        Assert.Equal(["no", "sessions.player", "sessions.place.bay"], contents.Names);
        Assert.Equal([["1", "Ada", "2"], ["2", "Ada", "2"], ["1", "Cy", ""]], contents.Rows);
        Assert.Equal(["{\"no\":1}", "{\"no\":2}", "{\"no\":1}"], contents.Raw);
        Assert.Equal([1, 2, 3], contents.Lines);
        Assert.Equal(["station: north"], contents.Document.Preamble.Select(line => line.Text));
    }

    [Fact]
    public void ABrokenLineIsARejectWithItsRawTextAndTheNextLineGoesOn()
    {
        var contents = Some.Read("{\"ms\":1,\"a\":2}\n{\"ms\":2,\"a\":\n\n[1]\n\"x\ny\n{\"ms\":3,\"a\":4}\n", Some.Mapping(ReaderKind.Ndjson, "ms", "a"));
        Assert.Equal([["1", "2"], ["3", "4"]], contents.Rows);
        Assert.Equal([1, 7], contents.Lines);
        Assert.Equal([2, 4, 5, 6], contents.Rejected.Select(reject => reject.Line));
        Assert.Equal("{\"ms\":2,\"a\":", contents.Rejected[0].Raw);
        Assert.Equal(["json-malformed", "json-no-object", "json-malformed", "json-malformed"], contents.Rejected.Select(reject => reject.Problem.Code));
        Assert.Equal(7, contents.Document.Counts.Records);
    }

    [Fact]
    public void AKeyThatStandsTwiceInARecordIsAReject()
    {
        var contents = Some.Read("{\"ms\":1,\"a\":2,\"a\":3}\n{\"ms\":2,\"a\":5}\n", Some.Mapping(ReaderKind.Ndjson, "ms", "a"));
        Assert.Equal("json-key-twice", Assert.Single(contents.Rejected).Problem.Code);
        Assert.Equal([["2", "5"]], contents.Rows);
    }

    [Fact]
    public void KeysOfTheLastRecordAreColumnsToo()
    {
        var text = string.Concat(Enumerable.Repeat("{\"ms\":1}\n", 40_000)) + "{\"ms\":2,\"late\":7}";
        var contents = Some.Read(text, Some.Mapping(ReaderKind.Ndjson, "ms", "late"));
        Assert.Equal(["ms", "late"], contents.Names);
        Assert.Equal(["2", "7"], contents.Rows[^1]);
        Assert.Equal(CellKind.Empty, contents.Kinds[0][1]);
    }

    [Fact]
    public void MixedTypesOfOneKeyAreToldApart()
    {
        var contents = Some.Read("{\"ms\":1,\"a\":2}\n{\"ms\":2,\"a\":\"off\"}\n{\"ms\":3,\"a\":{\"b\":1}}\n", Some.Mapping(ReaderKind.Ndjson, "ms", "a"));
        Assert.Equal([CellKind.Number, CellKind.Text, CellKind.Empty], contents.Kinds.Select(kinds => kinds[1]));
        Assert.Equal(["ms", "a", "a.b"], contents.Names);
    }

    [Fact]
    public void VeryDeepNestingIsAReject()
    {
        var deep = string.Concat(Enumerable.Repeat("{\"a\":", 5000)) + "1" + new string('}', 5000);
        var contents = Some.Read("{\"ms\":1,\"a\":2}\n" + deep + "\n", Some.Mapping(ReaderKind.Ndjson, "ms", "a"));
        Assert.Equal("json-malformed", Assert.Single(contents.Rejected).Problem.Code);
        Some.Held(Some.Open(deep, Some.Mapping(ReaderKind.Json, "ms", "a")), "json-malformed");
    }

    [Fact]
    public void AHugeLineIsARejectInBoundedMemory()
    {
        using var stream = new GeneratedStream("{\"ms\":1}\n{\"ms\":\"", "all one text ", 60_000_000, "\"}\n{\"ms\":3}\n");
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.True(RecordReaders.Open(stream, "long.ndjson", Some.Mapping(ReaderKind.Ndjson, "ms")).Succeeded(out var document));
        var contents = Contents.Of(document);
        Assert.Equal([["1"], ["3"]], contents.Rows);
        Assert.Equal((2, "record-too-long"), (contents.Rejected[0].Line, contents.Rejected[0].Problem.Code));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000_000);
    }

    [Theory]
    [InlineData("{\"a\":1")]
    [InlineData("[{\"a\":1},")]
    [InlineData("nothing")]
    public void ADocumentThatIsCutOffIsHeld(string text) => Some.Held(Some.Open(text, Some.Mapping(ReaderKind.Json, "a")), "json-malformed");

    [Fact]
    public void ADocumentWithoutTheArrayIsHeldWithItsPath()
    {
        var mapping = Some.Mapping(ReaderKind.Json, "a") with { Layout = new Layout { Records = "shots" } };
        Assert.Contains("'shots'", Some.Held(Some.Open("{\"swings\":[]}", mapping), "records-missing").Found, StringComparison.Ordinal);
    }

    [Fact]
    public void TextCellsOfJsonMayHoldDecimalCommas() =>
        Assert.Equal(',', Some.Read("[{\"ms\":1,\"a\":\"2,5\"}]", Some.Mapping(ReaderKind.Json, "ms", "a")).Document.Decimal);

    [Fact]
    public void Utf16IsReadAsWell() =>
        Assert.Equal(["1", "Zoë"], Some.Read([0xFF, 0xFE, .. System.Text.Encoding.Unicode.GetBytes("{\"ms\":1,\"a\":\"Zoë\"}\n")], Some.Mapping(ReaderKind.Ndjson, "ms", "a")).Rows[0]);
}
