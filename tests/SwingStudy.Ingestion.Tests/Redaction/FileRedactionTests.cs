using System.Text;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Ingestion.Redaction;
using SwingStudy.Ingestion.Tests.Readers.C3d;
using SwingStudy.Ingestion.Tests.Support;
using SwingStudy.Storage.Identities;

namespace SwingStudy.Ingestion.Tests.Redaction;

public sealed class FileRedactionTests
{
    private const string Head = "Player;When;No;Club speed\n";
    private static readonly PersonTexts Otter = Person("Otter", "7");

    [Fact]
    public void RecordsOfThePersonBecomeEmptyLinesAndAllElseStays()
    {
        const string file = Head + "Otter;01.09.2026 10:00:00;1;90,1\r\nMoss;01.09.2026 10:01:00;2;80\r\n OTTER ;01.09.2026 10:02:00;3;91\nMoss;01.09.2026 10:03:00;4;81";
        Assert.Equal(Head + "\r\nMoss;01.09.2026 10:01:00;2;80\r\n\nMoss;01.09.2026 10:03:00;4;81", Cut(file));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void ANameIsFoundInPackedFilesWithinPackedFiles(int packings)
    {
        var (named, other) = (Encoding.UTF8.GetBytes(Head + "Otter;01.09.2026 10:00:00;1;90\n"), Encoding.UTF8.GetBytes(Head));
        for (var i = 0; i < packings; i++)
            (named, other) = (Gzip(named), Gzip(other));
        Assert.True(FileRedaction.Names(named, Otter));
        Assert.True(FileRedaction.Names(new MemoryStream(named), Otter));
        Assert.False(FileRedaction.Names(other, Otter));
        Assert.False(FileRedaction.Names(new MemoryStream(other), Otter));

        static byte[] Gzip(byte[] content)
        {
            using var stream = new MemoryStream();
            using (var gzip = new System.IO.Compression.GZipStream(stream, System.IO.Compression.CompressionMode.Compress))
                gzip.Write(content);
            return stream.ToArray();
        }
    }

    [Fact]
    public void APackedFileIsCutAndLeftUnpacked()
    {
        const string file = Head + "Otter;01.09.2026 10:00:00;1;90\nMoss;01.09.2026 10:01:00;2;80\n";
        var packed = Readers.Packed.PackedFileTests.Gzip(file);
        Assert.True(FileRedaction.Names(packed, Otter));
        Assert.True(FileRedaction.Names(new MemoryStream(packed), Otter));
        Assert.False(FileRedaction.Names(Readers.Packed.PackedFileTests.Gzip(Head), Otter));
        var cut = FileRedaction.Cut(packed, "a.csv.gz", Some.Mapping, Otter, new HashSet<int>());
        Assert.Equal(Head + "\nMoss;01.09.2026 10:01:00;2;80\n", Encoding.UTF8.GetString(cut.Content!));
    }

    [Fact]
    public void ARecordOnSeveralLinesGoesAsAWholeAndLaterLinesKeepTheirNumbers()
    {
        const string file = Head + "\"Otter\n\";01.09.2026 10:00:00;1;90\nMoss;01.09.2026 10:01:00;2;80\n";
        Assert.Equal(Head + "\n\nMoss;01.09.2026 10:01:00;2;80\n", Cut(file));
    }

    [Fact]
    public void AShortAliasCountsInTheCellOfThePlayerAlone()
    {
        const string file = Head + "7;01.09.2026 10:00:00;1;90\nMoss;01.09.2026 10:01:00;7;80\n";
        Assert.Equal(Head + "\nMoss;01.09.2026 10:01:00;7;80\n", Cut(file));
    }

    [Fact]
    public void ANameInSomebodyElsesRecordIsCutOutOfIt()
    {
        const string head = "Player;When;No;Club speed;Remark\n";
        const string file = head + "Moss;01.09.2026 10:01:00;2;80;after Otter, before Ottersen\n";
        Assert.Equal(head + "Moss;01.09.2026 10:01:00;2;80;after , before Ottersen\n", Cut(file));
    }

    [Fact]
    public void LinesThatAreKnownToBeThePersonsGoWithoutAName()
    {
        const string file = "When;No;Club speed\n01.09.2026 10:00:00;1;90\n01.09.2026 10:01:00;2;80\n";
        var cut = FileRedaction.Cut(Encoding.UTF8.GetBytes(file), "a.csv", Some.Mapping with { Participant = null }, Otter, new HashSet<int> { 2 });
        Assert.Equal("When;No;Club speed\n\n01.09.2026 10:01:00;2;80\n", Encoding.UTF8.GetString(cut.Content!));
    }

    [Theory]
    [InlineData("windows-1252")]
    [InlineData("utf-16")]
    public void TheEncodingStays(string name)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        var encoding = Encoding.GetEncoding(name);
        byte[] file = [.. encoding.GetPreamble(), .. encoding.GetBytes(Head + "Grünfink;01.09.2026 10:00:00;1;90\nMöwe;01.09.2026 10:01:00;2;80\n")];
        var cut = FileRedaction.Cut(file, "a.csv", Some.Mapping with { Text = Some.Mapping.Text with { Encoding = null } }, Person("Grünfink"), new HashSet<int>());
        Assert.Equal([.. encoding.GetPreamble(), .. encoding.GetBytes(Head + "\nMöwe;01.09.2026 10:01:00;2;80\n")], cut.Content!);
    }

    [Fact]
    public void AFileWithoutThePersonIsNotTouched() =>
        Assert.Equal(RedactionKind.Untouched, FileRedaction.Cut(Encoding.UTF8.GetBytes(Head + "Moss;01.09.2026 10:01:00;2;80\n"), "a.csv", Some.Mapping, Otter, new HashSet<int>()).Kind);

    [Fact]
    public void RecordsOfAnArrayKeepTheirPositions()
    {
        const string file = """[{"Player":"Otter","When":"01.09.2026 10:00:00","No":1,"Club speed":"90"}, {"Player":"Moss","When":"01.09.2026 10:01:00","No":2,"Club speed":"80"}]""";
        var cut = FileRedaction.Cut(Encoding.UTF8.GetBytes(file), "a.json", Some.Mapping with { Reader = ReaderKind.Json }, Otter, new HashSet<int>());
        Assert.Equal("""[{}, {"Player":"Moss","When":"01.09.2026 10:01:00","No":2,"Club speed":"80"}]""", Encoding.UTF8.GetString(cut.Content!));
    }

    [Theory]
    [InlineData("{\"a\":\"Gr\\u00fcnfink\"}")]
    [InlineData("<a>Gr&#252;nfink</a>")]
    [InlineData("GRÜNFINK")]
    public void ANameIsFoundHoweverItIsWritten(string text)
    {
        Assert.True(FileRedaction.Names(Encoding.UTF8.GetBytes(text), Person("Grünfink")));
        Assert.True(FileRedaction.Names(Encoding.Latin1.GetBytes(text), Person("Grünfink")));
        Assert.True(FileRedaction.Names(Encoding.Unicode.GetBytes(text), Person("Grünfink")));
    }

    [Fact]
    public void AShortPseudonymAmongSamplesIsChanceAndAmongTextIsNot()
    {
        // The bytes of 'P01' between bytes that are no letters, in the middle of noise that no text holds.
        var noise = new byte[4096];
        new Random(20261126).NextBytes(noise);
        byte[] With(string text) => [.. noise, 0x01, .. Encoding.ASCII.GetBytes(text), 0x02, .. noise];
        Assert.False(FileRedaction.Names(noise, Otter));
        Assert.False(FileRedaction.Names(With("P01"), Otter));
        Assert.True(FileRedaction.Names(With("Name: P01"), Otter));
        Assert.True(FileRedaction.Names(With("P01\0\0\0\0\0"), Otter));
        Assert.True(FileRedaction.Names(With("Grünfink".Replace('ü', 'u')), Person("Grunfink")));
    }

    [Fact]
    public void ARecordingOfMarkersNamesWhomItsParametersName()
    {
        // A coordinate whose bytes are 'P01' and zeros after it.
        double[] chance = [BitConverter.ToSingle([0, (byte)'P', (byte)'0', (byte)'1'])], zero = [0];
        byte[] Recorded(params string[] subjects) => SomeC3d.Bytes(new C3dRecording
        {
            RateHz = 100,
            Points = [new C3dPoint("CLB1", chance, zero, zero)],
            Texts = subjects.Length == 0 ? new Dictionary<(string, string), IReadOnlyList<string>>() : new() { [("SUBJECTS", "NAMES")] = subjects },
        }, C3dStorage.IntelReal);
        Assert.True(Recorded().AsSpan().IndexOf("P01\0\0\0\0"u8) > 0);
        Assert.False(FileRedaction.Names(Recorded(), Otter));
        Assert.False(FileRedaction.Names(Recorded("Moss"), Otter));
        Assert.True(FileRedaction.Names(Recorded("P01"), Otter));
        Assert.True(FileRedaction.Names(Recorded("Otter"), Otter));
    }

    [Fact]
    public void ALargeFileIsLookedThroughToItsEndAndAcrossLooks()
    {
        // Across the border of two looks, and at the very end.
        var film = new byte[(1 << 22) + (1 << 13)];
        Assert.False(FileRedaction.Names(new MemoryStream(film), Otter));
        foreach (var at in new[] { (1 << 22) + (1 << 12) - 4, film.Length - 13 })
        {
            var named = (byte[])film.Clone();
            Encoding.ASCII.GetBytes("filmed: Otter").CopyTo(named, at);
            Assert.True(FileRedaction.Names(new MemoryStream(named), Otter));
        }
    }

    [Fact]
    public void OfAPackageWhatIsInItCountsAndNotItsCompressedBytes()
    {
        static byte[] Zip(string name, string text)
        {
            using var bytes = new MemoryStream();
            using (var zip = new System.IO.Compression.ZipArchive(bytes, System.IO.Compression.ZipArchiveMode.Create, leaveOpen: true))
            {
                using var entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }

            return bytes.ToArray();
        }

        Assert.True(FileRedaction.Names(Zip("a.xml", "<c>Otter</c>"), Otter));
        Assert.True(FileRedaction.Names(Zip("otter.xml", "<c/>"), Otter));
        Assert.False(FileRedaction.Names(Zip("a.xml", "<c>Moss</c>"), Otter));
    }

    private static string Cut(string file)
    {
        var cut = FileRedaction.Cut(Encoding.UTF8.GetBytes(file), "a.csv", Some.Mapping, Otter, new HashSet<int>());
        Assert.Equal(RedactionKind.Cut, cut.Kind);
        return Encoding.UTF8.GetString(cut.Content!);
    }

    private static PersonTexts Person(params string[] aliases) => new(new ParticipantId("P01"), aliases, new PersonNames(null, null));
}
