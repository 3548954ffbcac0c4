using CsCheck;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Recordings;

/// <summary>Samples in text, in all the ways in which exports divide them.</summary>
public sealed class TextRecordingTests
{
    private const string Head = SomeRecording.Head;

    [Fact]
    public void OneRecordingAFileHasItsTimePlayerRateAndSamples()
    {
        var recording = SomeRecording.One(Head + "0;1.5\n0.002;2\n0.004;-3e1\n");
        Assert.Equal("Ada", recording.Alias);
        Assert.Equal(DateTimeOffset.Parse("2025-10-07T09:05:40.350Z", System.Globalization.CultureInfo.InvariantCulture).ToUnixTimeMilliseconds(), recording.StartMillis);
        var curve = Assert.Single(recording.Curves);
        Assert.Equal(("lead_force_y", "N", 500.0), (curve.Channel, curve.Unit, curve.RateHz));
        Assert.Equal([1.5, 2, -30], curve.Values);
        Assert.Equal((1, 3L, RecordingPurpose.Swing), (recording.Row, recording.Lines, recording.Purpose));
        Assert.Null(recording.ContactSeconds);
    }

    [Fact]
    public void LostSamplesAndLostLinesStayMissing()
    {
        var (recordings, reader) = SomeRecording.Read(Head + "0;1\n0.01;NaN\n0.02;\n0.05;4\n0.06;x\n0.07;5\n", SomeRecording.Mapping);
        Assert.Equal([1, double.NaN, double.NaN, double.NaN, double.NaN, 4, double.NaN, 5], SomeRecording.Values(recordings[0], "lead_force_y"));
        Assert.Equal("x", Assert.Single(reader.Rejects).Raw);
        Assert.Equal("samples-lost", Assert.Single(reader.Remarks).Code);
        Assert.Equal((10L, 6L), (reader.Counts.Read, reader.Counts.Taken));
    }

    /// <summary>600 samples a second with a clock of whole milliseconds: steps of 1 and 2 ms.</summary>
    [Fact]
    public void AClockOfCoarseStepsIsEvenAllTheSame()
    {
        var lines = string.Concat(Enumerable.Range(0, 61).Select(i => $"{(int)(i / 0.6)};{i}\n"));
        var mapping = SomeRecording.With(SomeRecording.Rule with { Clock = Some.Column("t") with { Unit = "ms" } });
        var recording = SomeRecording.One(Head.Replace("\ns;N", "\nms;N", StringComparison.Ordinal) + lines, mapping);
        Assert.Equal(600, recording.Curves[0].RateHz, 1.0);
        Assert.Equal(61, recording.Curves[0].Values.Length);
    }

    [Theory]
    [InlineData("0;1\n0.01;1\n0.005;1\n", "clock-not-rising")]
    [InlineData("0;1\n0.01;1\n99;1\n", "clock-gap")]
    [InlineData("0;1\nx;1\n0.02;1\n", "clock-unreadable")]
    [InlineData("0;NaN\n0.01;NaN\n", "recording-without-values")]
    [InlineData("0;1\n", "rate-unknown")]
    public void AClockThatTellsNoGridHoldsTheFile(string lines, string code) => Assert.Equal(code, SomeRecording.Held(Head + lines).Code);

    [Fact]
    public void AClockThatContradictsTheStatedRateHoldsTheFile() => Assert.Equal(
        "rate-differs", SomeRecording.Held(Head + "0;1\n0.01;2\n0.02;3\n", SomeRecording.With(SomeRecording.Rule with { Rate = new FieldSource { Constant = "1000" } })).Code);

    [Theory]
    [InlineData("Player: Ada\nt;Fz\ns;N\n", "time-missing")]
    [InlineData("Started: soon\nt;Fz\ns;N\n", "time-unreadable")]
    [InlineData("Started: 2025-03-30 02:30:00.0\nt;Fz\ns;N\n", "time-skipped")]
    [InlineData("Started: 2025-10-26 02:30:00.0\nt;Fz\ns;N\n", "time-repeated")]
    public void ATimeThatIsNoMomentHoldsTheFile(string head, string code) => Assert.Equal(code, SomeRecording.Held(head + "0;1\n0.01;2\n").Code);

    [Theory]
    [InlineData("t;Fx\ns;N\n", "column-missing")]
    [InlineData("t;Fz\ns;kg\n", "unit-of-other-kind")]
    [InlineData("t;Fz\n", "unit-unstated")]
    public void AColumnThatDoesNotFitHoldsTheFile(string headings, string code) =>
        Assert.Contains(SomeRecording.Read("Started: 2025-10-07 11:05:40.350\n" + headings + "0;1\n0.01;2\n", SomeRecording.Mapping).Reader.Problems, problem => problem.Code == code);

    [Fact]
    public void NobodyIsNamedByADash() => Assert.Null(SomeRecording.One(Head.Replace("Ada", "-", StringComparison.Ordinal) + "0;1\n0.01;2\n").Alias);

    [Fact]
    public void ATriggerIsContactOfASwingAndNotOfEmptyPlates()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with
        {
            Trigger = Some.Preamble("^Trigger: (?<value>.+) ms") with { Unit = "ms" },
            Purposes = [new PurposeRule(RecordingPurpose.Zero, "zero_", null, null), new PurposeRule(RecordingPurpose.Quiet, null, "^Player: .* quiet$", 9)],
        });
        var text = "Trigger: 1300 ms\n" + Head + "0;1\n0.01;2\n";
        var swing = SomeRecording.One(text, mapping);
        Assert.Equal((1.3, "trigger"), (swing.ContactSeconds, Assert.Single(swing.Events).Event));
        var zero = SomeRecording.One(text, mapping, "zero_1.txt");
        Assert.Equal((RecordingPurpose.Zero, null), (zero.Purpose, zero.ContactSeconds));
        Assert.Empty(zero.Events);
        Assert.Equal(RecordingPurpose.Quiet, SomeRecording.One(text.Replace("Ada", "Ada quiet", StringComparison.Ordinal), mapping).Purpose);
    }

    [Fact]
    public void ManyRecordingsBelowEachOtherAreToldByTheirNumber()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Form = RecordingForm.Trials, Trial = Some.Column("Swing") });
        var (recordings, reader) = SomeRecording.Read("Started: 2025-10-07 11:05:40.000\nSwing;t;Fz\n;s;N\n7;0;1\n7;0.1;2\n\n8;10;3\n8;10.1;4\n8;10.2;5\n", mapping);
        Assert.Empty(reader.Problems);
        Assert.Equal([7L, 8L], recordings.Select(recording => recording.Sequence!.Value));
        Assert.Equal(10_000, recordings[1].StartMillis - recordings[0].StartMillis);
        Assert.Equal([4, 7], recordings.Select(recording => recording.Row));
        Assert.Equal([3.0, 4, 5], SomeRecording.Values(recordings[1], "lead_force_y"));
        Assert.Equal(5, reader.Counts.Taken);
    }

    [Fact]
    public void ANumberThatComesBackHoldsTheFile()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Form = RecordingForm.Trials, Trial = Some.Column("Swing") });
        Assert.Equal("trial-returns", SomeRecording.Held("Started: 2025-10-07 11:05:40.000\nSwing;t;Fz\n;s;N\n7;0;1\n7;1;1\n8;0;2\n8;1;2\n7;0;3\n7;1;3\n", mapping).Code);
    }

    [Fact]
    public void RecordingsSideBySideHaveLengthsOfTheirOwn()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Form = RecordingForm.Wide }) with { Layout = new Layout { HeadingRows = 2 } };
        var (recordings, reader) = SomeRecording.Read("Started: 2025-10-07 11:05:40.000\n;1;;2\nt;Fz;Fx;Fz\ns;N;N;N\n0;1;9;10\n0.1;2;9;20\n0.2;;;30\n0.3;;;\n", mapping);
        Assert.Empty(reader.Problems);
        Assert.Equal([1L, 2L], recordings.Select(recording => recording.Sequence!.Value));
        Assert.Equal([1.0, 2], SomeRecording.Values(recordings[0], "lead_force_y"));
        Assert.Equal([10.0, 20, 30], SomeRecording.Values(recordings[1], "lead_force_y"));
        Assert.Equal((3L, 1L), (reader.Counts.Taken, reader.Counts.NotData["between recordings"]));
    }

    [Fact]
    public void AStreamIsCutAroundItsTriggers()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Form = RecordingForm.Stream, Cut = new StreamCut("Click", 3, -0.2, 0.3) });
        var lines = string.Concat(Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{i / 10.0};{i};{(i is 20 or 21 or 70 ? 5 : 0)}\n")));
        var (recordings, reader) = SomeRecording.Read("Started: 2025-10-07 11:05:40.000\nt;Fz;Click\ns;N;\n" + lines, mapping);
        Assert.Empty(reader.Problems);
        Assert.Equal(2, recordings.Count);
        Assert.Equal([18.0, 19, 20, 21, 22, 23], SomeRecording.Values(recordings[0], "lead_force_y"));
        Assert.Equal(0.2, recordings[0].ContactSeconds!.Value, 1e-9);
        Assert.Equal(5000, recordings[1].StartMillis - recordings[0].StartMillis);
        Assert.Equal((12L, 88L), (reader.Counts.Taken, reader.Counts.NotData["between recordings"]));
    }

    [Fact]
    public void AStreamWithoutATriggerIsHeld()
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Form = RecordingForm.Stream, Cut = new StreamCut("Click", 3, -0.2, 0.3) });
        Assert.Equal("stream-untriggered", SomeRecording.Held("Started: 2025-10-07 11:05:40.000\nt;Fz;Click\ns;N;\n0;1;0\n0.1;1;0\n", mapping).Code);
    }

    [Fact]
    public void MarkersUnderTwoHeadingRowsBecomeLandmarks()
    {
        var mapping = SomeRecording.With(new RecordingRule
        {
            Clock = Some.Column("t"),
            Landmarks = new Dictionary<string, string> { ["club_head"] = "CLB", ["lead_wrist"] = "WR" },
            Axes = AxisMap.Of("x", "z", "-y")!,
        }) with { Layout = new Layout { HeadingRows = 2 } };
        var recording = SomeRecording.One("Started: 2025-10-07 11:05:40.000\n;CLB;;;WR;;\nt;X;Y;Z;X;Y;Z\ns;mm;mm;mm;mm;mm;mm\n0;1;2;3;4;5;6\n0.1;10;20;30;;;\n", mapping);
        Assert.Equal(["club_head_x", "club_head_y", "club_head_z", "lead_wrist_x", "lead_wrist_y", "lead_wrist_z"], recording.Curves.Select(curve => curve.Channel));
        Assert.Equal([0.003, 0.03], SomeRecording.Values(recording, "club_head_y"));
        Assert.Equal([-0.002, -0.02], SomeRecording.Values(recording, "club_head_z"));
        Assert.Equal([0.004, double.NaN], SomeRecording.Values(recording, "lead_wrist_x"));
    }

    [Theory]
    [InlineData(true, "lead_force_y")]
    [InlineData(false, "trail_force_y")]
    public void TheLeftSideLeadsForAPlayerWhoSwingsRightHanded(bool isRightHanded, string channel)
    {
        var mapping = SomeRecording.With(SomeRecording.Rule with { Channels = new Dictionary<string, FieldSource> { ["left_force_y"] = Some.Column("Fz") } });
        var (recordings, _) = SomeRecording.Read(Head + "0;1\n0.01;2\n", mapping, isRightHanded: alias => alias == "Ada" ? isRightHanded : null);
        Assert.Equal(channel, recordings[0].Curves[0].Channel);
    }

    [Fact]
    public void AnUnknownHandHoldsTheFileUnlessTheMappingSaysIt()
    {
        var rule = SomeRecording.Rule with { Channels = new Dictionary<string, FieldSource> { ["right_force_y"] = Some.Column("Fz") } };
        Assert.Equal("handedness-unknown", SomeRecording.Held(Head + "0;1\n0.01;2\n", SomeRecording.With(rule)).Code);
        var said = rule with { Handedness = new FieldSource { Constant = "L", Words = new Dictionary<string, string> { ["L"] = "left" } } };
        Assert.Equal("lead_force_y", SomeRecording.One(Head + "0;1\n0.01;2\n", SomeRecording.With(said)).Curves[0].Channel);
    }

    /// <summary>Whatever lines are lost, broken or blank: every line is accounted for, and samples keep their place in time.</summary>
    [Fact]
    public void EachLineIsAccountedForAndEachSampleKeepsItsTime()
    {
        var line = Gen.Frequency((8, Gen.Const("ok")), (1, Gen.Const("lost")), (1, Gen.Const("nan")), (1, Gen.Const("broken")), (1, Gen.Const("blank")));
        line.Array[3, 60].Where(lines => lines[0] == "ok" && lines[1] == "ok" && lines[^1] == "ok").Sample(lines =>
        {
            var text = string.Concat(lines.Select((kind, i) => kind switch
            {
                "ok" => FormattableString.Invariant($"{i / 100.0};{i}\n"),
                "nan" => FormattableString.Invariant($"{i / 100.0};NaN\n"),
                "broken" => FormattableString.Invariant($"{i / 100.0};{i};7;8\n"),
                "blank" => "\n",
                _ => "",
            }));
            var (recordings, reader) = SomeRecording.Read(Head + text, SomeRecording.With(SomeRecording.Rule with { Rate = new FieldSource { Constant = "100" } }));
            if (reader.Problems.Count > 0)
            {
                Assert.Equal("clock-gap", reader.Problems[0].Code);
                return;
            }

            var values = SomeRecording.Values(recordings[0], "lead_force_y");
            Assert.Equal(lines.Length, values.Length);
            Assert.All(values.Select((value, i) => (value, i)), pair => Assert.Equal(lines[pair.i] == "ok" ? pair.i : double.NaN, pair.value));
            Assert.Equal(lines.Count(kind => kind == "broken"), reader.Counts.Rejected);
        }, iter: 300);
    }
}
