using System.IO.Compression;
using System.Text;
using SwingStudy.Domain.Problems;
using SwingStudy.Ingestion.Readers;
using SwingStudy.Ingestion.Readers.Packed;
using Bay = SwingStudy.Ingestion.Tests.Support.Some;

namespace SwingStudy.Ingestion.Tests.Readers.Packed;

public sealed class PackedFileTests
{
    private const string Text = "Player;When;No;Club speed\nOtter;01.09.2026 10:00:00;1;90,1\nMoss;01.09.2026 10:01:00;2;80,5\n";

    [Fact]
    public void AnExportInGzipReadsAsTheExport() => Assert.Equal(Rows(Encoding.UTF8.GetBytes(Text)), Rows(Gzip(Text)));

    [Fact]
    public void PartsOfGzipFollowEachOther() => Assert.Equal(Rows(Encoding.UTF8.GetBytes(Text)), Rows([.. Gzip(Text[..40]), .. Gzip(Text[40..])]));

    [Fact]
    public void AnExportAloneInAZipReadsAsTheExport() => Assert.Equal(Rows(Encoding.UTF8.GetBytes(Text)), Rows(Zip(("exports/", null), ("exports/a.csv", Text), ("__MACOSX/exports/._a.csv", "x"))));

    [Fact]
    public void FilesBesideEachOtherInAZipAreNotGuessedAt()
    {
        Assert.Equal("file-compressed", Problem(Zip(("a.csv", Text), ("b.csv", Text))).Code);
        Assert.Equal("file-compressed", Problem(Zip()).Code);
    }

    [Fact]
    public void AFileThatWasCutShortOrChangedIsNotRead()
    {
        var random = new Random(5);
        var whole = Gzip(string.Concat(Enumerable.Range(0, 4000).Select(_ => (char)random.Next(32, 126))));
        Assert.Equal("file-unpacks-wrong", Problem(whole[..(whole.Length / 2)]).Code);
        Assert.Equal("file-unpacks-wrong", Problem(whole[..^5]).Code);
        byte[] changed = [.. whole[..200], (byte)(whole[200] ^ 0xFF), .. whole[201..]];
        Assert.Equal("file-unpacks-wrong", Problem(changed).Code);
        var zip = Zip(("a.csv", Text));
        Assert.Equal("file-unpacks-wrong", Problem(zip[..(zip.Length / 2)]).Code);
    }

    [Fact]
    public void AFileThatUnpacksToFarMoreThanAnExportIsNotUnpacked() => Assert.Equal("file-unpacks-wrong", Problem(Gzip(new string(' ', (int)ReaderLimits.UnpackedFree + 4096))).Code);

    [Fact]
    public void TheTemporaryFileGoesWithTheStream()
    {
        Assert.True(PackedFile.Open(new MemoryStream(Gzip(Text)), "a.gz").Succeeded(out var stream));
        var path = Assert.IsType<UnpackedStream>(stream).Name;
        Assert.True(File.Exists(path));
        stream.Dispose();
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void BytesThatAreNotPackedComeBackThemselves()
    {
        using var plain = new MemoryStream(Encoding.UTF8.GetBytes(Text));
        Assert.True(PackedFile.Open(plain, "a.csv").Succeeded(out var stream));
        Assert.Same(plain, stream);
        Assert.Equal(0, stream.Position);
    }

    internal static byte[] Gzip(string text)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            gzip.Write(Encoding.UTF8.GetBytes(text));
        return packed.ToArray();
    }

    private static byte[] Zip(params (string Name, string? Text)[] files)
    {
        using var packed = new MemoryStream();
        using (var zip = new ZipArchive(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in files)
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text ?? ""));
            }
        }

        return packed.ToArray();
    }

    private static List<string> Rows(byte[] content)
    {
        var outcome = RecordReaders.Open(new MemoryStream(content), "a.csv", Bay.Mapping);
        Assert.True(outcome.Succeeded(out var document, out var problems), string.Join("; ", problems.Select(problem => problem.Found)));
        using (document)
        {
            var rows = new List<string>();
            foreach (var block in document.Blocks())
            {
                using (block)
                    rows.AddRange(Enumerable.Range(0, block.RowCount).Select(i => $"{block.Line(i)}: {block.Raw(i)}"));
            }

            Assert.Equal(2, rows.Count);
            return rows;
        }
    }

    private static Problem Problem(byte[] content)
    {
        Assert.False(RecordReaders.Open(new MemoryStream(content), "a.csv", Bay.Mapping).Succeeded(out _, out var problems));
        return Assert.Single(problems);
    }
}
