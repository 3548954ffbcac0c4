using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Intake;
using SwingStudy.Ingestion.Readers.C3d;
using SwingStudy.Ingestion.Suggest;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Suggest;

/// <summary>Drafts for recordings that nobody described: they read as declarations and open the file they were made from.</summary>
public sealed class RecordingSuggestionTests(ITestOutputHelper output) : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("suggest-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void PlatesWithLeftAndRightAndTheirLoadDownward()
    {
        var lines = string.Concat(Enumerable.Range(0, 50).Select(i => FormattableString.Invariant($"{i * 2},{i % 3},2,-400.5,{i % 5},1,-310\n")));
        var mapping = Drafted("stand.csv", "Subject: Ada\nStart: 2025-10-21 09:10:11.250\nFrequency: 500 Hz\nImpact at: 40 ms\n\nTime,Left Fx,Left Fy,Left Fz,Right Fx,Right Fy,Right Fz\nms,N,N,N,N,N,N\n" + lines);
        var rule = mapping.Recording!;
        Assert.Equal("Left Fz", rule.Channels["left_force_z"].Column);
        Assert.Equal("Right Fx", rule.Channels["right_force_x"].Column);
        Assert.Equal((LoadDirection.OnPlate, "z"), (rule.Loads, rule.Axes.Y));
        Assert.NotNull(rule.Rate);
        Assert.NotNull(rule.Trigger);
        Assert.NotNull(mapping.Participant);
        Tried(mapping, "stand.csv", curves: "6");
    }

    [Fact]
    public void RecordingsSideBySideAreAllDraftedAndNotTheFirstAlone()
    {
        var lines = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{i / 100.0};1.5;2;400.5;1;2;310;3;4;500.5;3;4;410\n")));
        var mapping = Drafted("wide.csv", "Subject: Ada\nStart: 2025-10-21 09:10:11.250\n;1;;;;;;2;;;;;\nTime (s);Lead Fx (N);Lead Fy (N);Lead Fz (N);Trail Fx (N);Trail Fy (N);Trail Fz (N)"
            + ";Lead Fx (N);Lead Fy (N);Lead Fz (N);Trail Fx (N);Trail Fy (N);Trail Fz (N)\n" + lines);
        Assert.Equal((RecordingForm.Wide, 2), (mapping.Recording!.Form, mapping.Layout.HeadingRows));
        Assert.Empty(mapping.Ignore);
        Tried(mapping, "wide.csv", curves: "6", recordings: 2);
    }

    [Fact]
    public void RecordingsBelowEachOtherHaveTheirNumberPlayerAndTimeInColumns()
    {
        var lines = string.Concat(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"Ada,{1 + (i / 20)},{i % 20 / 100.0},1.5,2,400.5,2025-10-21 09:1{i / 20}:11\n")));
        var mapping = Drafted("trials.csv", "Player,Trial,Time (s),Lead Fx (N),Lead Fy (N),Lead Fz (N),Started\n" + lines);
        Assert.Equal((RecordingForm.Trials, "Trial"), (mapping.Recording!.Form, mapping.Recording.Trial?.Column));
        Assert.Equal(("Player", "Started"), (mapping.Participant?.Column, mapping.Time.Parts[0].Column));
        Tried(mapping, "trials.csv", curves: "3", recordings: 2);
    }

    [Fact]
    public void CommentSignsDelimitersAndFramesAboveAndBesideSamplesAreUnderstood()
    {
        var lines = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{1000 + i},1.5,2,400.5\n")));
        var mapping = Drafted("frames.csv", "# subject=Ada\n# sample_rate=500\n# recorded=2025-10-21T09:10:11.250\nFrame,Lead Fx (lbf),Lead Fy (lbf),Lead Fz (lbf)\n" + lines);
        Assert.Equal((ClockKind.Frames, "Frame"), (mapping.Recording!.ClockKind, mapping.Recording.Clock?.Column));
        Assert.Null(mapping.Sequence);
        Tried(mapping, "frames.csv", curves: "3");
        mapping = Drafted("wall.csv", "Player,Ada\nDate,2025-10-21\nTime,Lead Fx (N),Lead Fy (N),Lead Fz (N)\n"
            + string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"14:05:06.{i * 10:000},1.5,2,400.5\n"))));
        Assert.Equal(ClockKind.TimeOfDay, mapping.Recording!.ClockKind);
        Tried(mapping, "wall.csv", curves: "3");
    }

    [Fact]
    public void PlatesNumberedWithoutUnitsAreDraftedAsGuesses()
    {
        var lines = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{i / 100.0}\t{i % 2}\t650.25\t2\t1\t50\t3\n")));
        var suggestion = Suggest("p.txt", "Recorded = 2025-10-21T09:10:11\ntime\tFx1\tFy1\tFz1\tFx2\tFy2\tFz2\n" + lines);
        Assert.Equal("y", suggestion.Mapping.Recording!.Axes.Y);
        Assert.Contains(suggestion.Lines, line => line.Key.StartsWith("channels.", StringComparison.Ordinal) && line.Confidence <= 0.2);
        Tried(Read(suggestion), "p.txt", curves: "6");
    }

    [Fact]
    public void MarkersUnderTwoHeadingRows()
    {
        var lines = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{i / 100.0};1.5;2;3;4;5;6;7;8;9\n")));
        var mapping = Drafted("m.csv", "Player: Ada\nStarted: 2025-10-21 09:10:11.250\n;L_WR;;;R_WR;;;CLUB HEAD;;\nt;X;Y;Z;X;Y;Z;X;Y;Z\ns;mm;mm;mm;mm;mm;mm;mm;mm;mm\n" + lines);
        Assert.Equal("L_WR", mapping.Recording!.Landmarks["left_wrist"]);
        Assert.Equal("CLUB HEAD", mapping.Recording.Landmarks["club_head"]);
        Tried(mapping, "m.csv", curves: "9");
    }

    [Fact]
    public void AC3dFileWithItsTimeInItsName()
    {
        double[] wave = [1, 2, 3];
        var stream = new MemoryStream();
        C3dWriter.Write(stream, new C3dRecording
        {
            RateHz = 200,
            Points = [new C3dPoint("L_WR", wave, wave, wave), new C3dPoint("T_SH", wave, wave, wave), new C3dPoint("ODD7", wave, wave, wave)],
            Analog = [new C3dAnalog("MIC", "V", wave)],
            Events = [new C3dEvent("Ball contact", 0.005)],
            Texts = new Dictionary<(string, string), IReadOnlyList<string>> { [("SUBJECTS", "NAMES")] = ["Ada"] },
        }, C3dStorage.IntelReal);
        var path = Path.Combine(_folder.FullName, "take_20251021_091011.c3d");
        File.WriteAllBytes(path, stream.ToArray());
        var outcome = SourceSuggester.Suggest(path, Some.Dictionary, "takes", "Europe/Vienna");
        Assert.True(outcome.Succeeded(out var suggestion), string.Join('\n', outcome.Problems));
        var mapping = Read(suggestion);
        Assert.Equal("L_WR", mapping.Recording!.Landmarks["lead_wrist"]);
        Assert.Equal(["ODD7"], mapping.Ignore);
        Assert.Equal("Ball contact", mapping.Recording.Events["impact"]);
        Tried(mapping, "take_20251021_091011.c3d", curves: "7");
    }

    [Fact]
    public void ABrokenC3dFileIsToldAsSuch()
    {
        var path = Path.Combine(_folder.FullName, "a.c3d");
        File.WriteAllBytes(path, [2, 0x50, .. new byte[100]]);
        Assert.Equal("c3d-not-one", Assert.Single(SourceSuggester.Suggest(path, Some.Dictionary).Problems).Code);
    }

    private SourceSuggestion Suggest(string name, string text)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, text);
        var outcome = SourceSuggester.Suggest(path, Some.Dictionary, "drafted", "Europe/Vienna");
        Assert.True(outcome.Succeeded(out var suggestion), string.Join('\n', outcome.Problems));
        return suggestion;
    }

    private SourceMapping Drafted(string name, string text) => Read(Suggest(name, text));

    private SourceMapping Read(SourceSuggestion suggestion)
    {
        output.WriteLine(suggestion.Yaml);
        var path = Path.Combine(_folder.FullName, "draft.yaml");
        File.WriteAllText(path, suggestion.Yaml);
        var read = MappingReader.Read(path, Some.Dictionary);
        Assert.True(read.Succeeded(out var mapping), string.Join('\n', read.Problems) + '\n' + suggestion.Yaml);
        return mapping;
    }

    private void Tried(SourceMapping mapping, string name, string curves, int recordings = 1)
    {
        var trial = SourceTrials.TrySource(Path.Combine(_folder.FullName, name), [mapping], Some.Dictionary);
        Assert.Empty(trial.Problems);
        Assert.Equal(recordings, trial.RowsAsMapped.Count);
        Assert.All(trial.RowsAsMapped, row => Assert.Equal(curves, row[7]));
    }
}
