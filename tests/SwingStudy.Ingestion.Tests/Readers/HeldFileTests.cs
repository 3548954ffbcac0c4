using System.Text;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Tests.Readers;

public sealed class HeldFileTests : IDisposable
{
    private readonly string _path = Path.Combine(Path.GetTempPath(), $"swingstudy-held-{Guid.NewGuid():N}.csv");

    public static TheoryData<string, int> Texts => new(
        from encoding in (string[])["utf-8", "utf-8 with mark", "utf-16", "utf-16BE", "windows-1252"]
        from rows in (int[])[0, 1, 3, 4000]
        select (encoding, rows));

    public void Dispose() => File.Delete(_path);

    [Theory]
    [MemberData(nameof(Texts))]
    public void IsReadAsTheSameBytesInAStreamAre(string encoding, int rows)
    {
        File.WriteAllBytes(_path, Bytes(encoding, rows));
        using var stream = File.OpenRead(_path);

        Contents held = Some.Read(RecordReaders.Open(_path, Some.Mapping("When", "Größe"))), plain = Some.Read(RecordReaders.Open(stream, _path, Some.Mapping("When", "Größe")));

        Assert.Equal(rows, held.Rows.Count);
        Assert.Equal(plain.Rows, held.Rows);
        Assert.Equal(plain.Lines, held.Lines);
        Assert.Equal(plain.Raw, held.Raw);
        Assert.Equal((plain.Document.Encoding, plain.Document.EncodingBasis, plain.Document.Delimiter, plain.Document.Decimal), (held.Document.Encoding, held.Document.EncodingBasis, held.Document.Delimiter, held.Document.Decimal));
        Assert.Equal(plain.Document.Counts, held.Document.Counts);
        Assert.Empty(held.Document.Notices);
    }

    [Theory]
    [InlineData(-1, true)]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void OnlyWhatIsSmallIsHeldAndAllOfItIsRead(int beyond, bool isHeld)
    {
        const string row = "2025-03-04 10:00:00;1";
        var size = ReaderLimits.HeldBytes + beyond;
        List<string> lines = ["When;Value"];
        for (var left = size - "When;Value\n".Length; left > 0; left -= lines[^1].Length + 1)
            lines.Add(left >= 2 * (row.Length + 1) ? row : row.PadRight(left - 1, '1'));
        File.WriteAllText(_path, string.Join('\n', lines) + "\n");
        Assert.Equal(size, new FileInfo(_path).Length);

        Assert.True(RecordReaders.OpenUnpacked(_path).Succeeded(out var stream));
        using (stream)
            Assert.Equal(isHeld, stream is HeldFile);

        Assert.Equal(lines.Skip(1), Some.Read(RecordReaders.Open(_path, Some.Mapping("When", "Value"))).Raw);
    }

    [Fact]
    public void ClosedItGivesNoBytes()
    {
        File.WriteAllText(_path, "a;b\n1;2\n");
        Assert.True(RecordReaders.OpenUnpacked(_path).Succeeded(out var stream));
        var held = Assert.IsType<HeldFile>(stream);
        Assert.Equal("a;b\n1;2\n"u8, held.Bytes);

        held.Dispose();
        held.Dispose();

        Assert.Throws<ObjectDisposedException>(() => held.Bytes.Length);
        Assert.Throws<ObjectDisposedException>(() => held.ReadByte());
    }

    private static byte[] Bytes(string encoding, int rows)
    {
        var text = new StringBuilder("When;Größe\r\n");
        for (var i = 0; i < rows; i++)
            text.Append($"2025-03-04 10:{i / 60 % 60:00}:{i % 60:00};{i},5 µ\r\n");
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var (form, marked) = encoding switch
        {
            "utf-8 with mark" => (new UTF8Encoding(true), true),
            "utf-8" => (new UTF8Encoding(false), false),
            _ => (Encoding.GetEncoding(encoding), encoding.StartsWith("utf", StringComparison.Ordinal)),
        };
        return [.. marked ? form.GetPreamble() : [], .. form.GetBytes(text.ToString())];
    }
}
