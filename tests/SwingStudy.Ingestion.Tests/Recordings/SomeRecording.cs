using SwingStudy.Domain.Identifiers;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Recordings;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Recordings;

/// <summary>Recordings in text to test with; a case changes only what matters to it.</summary>
internal static class SomeRecording
{
    /// <summary>A clock in seconds, one force, a player and a start above the samples.</summary>
    public static SourceMapping Mapping { get; } = new()
    {
        Source = "plates",
        Title = "Plates",
        Device = "plates-1",
        Rows = RowMeaning.Recordings,
        Reader = ReaderKind.Delimited,
        Files = @".*\.(txt|c3d)",
        Text = new TextFormat { Encoding = "utf-8", Delimiter = ';', Decimal = '.' },
        Missing = ["NaN"],
        Participant = Some.Preamble("^Player: (?<value>.+)") with { Missing = ["-"] },
        Time = new TimeRule { Parts = [Some.Preamble("^Started: (?<value>.+)")], Format = "yyyy-MM-dd HH:mm:ss.f", Zone = "Europe/Vienna" },
        Recording = Rule,
        File = "sources/plates.yaml",
        Hash = Sha256.Of("plates mapping"),
    };

    public static RecordingRule Rule => new()
    {
        Clock = Some.Column("t"),
        Channels = new Dictionary<string, FieldSource> { ["lead_force_y"] = Some.Column("Fz") },
    };

    public const string Head = "Player: Ada\nStarted: 2025-10-07 11:05:40.350\nt;Fz\ns;N\n";

    public static SourceMapping With(RecordingRule rule) => Mapping with { Recording = rule };

    public static (IReadOnlyList<Recording> Recordings, IRecordingReader Reader) Read(string text, SourceMapping mapping, string name = "a.txt", Func<string, bool?>? isRightHanded = null)
    {
        var request = new RecordingRequest { Mapping = mapping, File = name, Name = name, IsRightHanded = isRightHanded ?? (_ => null) };
        var outcome = RecordingReaders.Open(Some.Stream(text), request);
        Assert.True(outcome.Succeeded(out var reader), string.Join(Environment.NewLine, outcome.Problems));
        using (reader)
        {
            IReadOnlyList<Recording> recordings = [.. reader.Read()];
            Assert.True(reader.Problems.Count > 0 || reader.Counts.Balances);
            return (recordings, reader);
        }
    }

    public static Recording One(string text, SourceMapping? mapping = null, string name = "a.txt")
    {
        var (recordings, reader) = Read(text, mapping ?? Mapping, name);
        Assert.Empty(reader.Problems);
        return Assert.Single(recordings);
    }

    public static Problem Held(string text, SourceMapping? mapping = null, string name = "a.txt") => Assert.Single(Read(text, mapping ?? Mapping, name).Reader.Problems);

    public static double[] Values(Recording recording, string channel) => recording.Curves.Single(curve => curve.Channel == channel).Values;
}
