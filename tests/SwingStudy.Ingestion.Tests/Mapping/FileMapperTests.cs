using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Mapping;

public sealed class FileMapperTests
{
    private const string Headings = "No;Player;When;Club speed\n";

    [Fact]
    public void AUnitIsConvertedOnce()
    {
        var file = Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;100,0\n", Some.Mapping);
        Assert.Equal(44.704, file.Numbers("club_speed")[0], 12); // 1 mph = 0.44704 m/s exactly (NIST SP 811)
        Assert.Equal(["2026-09-07T08:00:00"], file.Times());
        Assert.Equal(["Fern"], file.Aliases);
    }

    [Fact]
    public void ScaleOffsetAndSignComeBeforeTheUnit()
    {
        var mapping = Some.Mapping with
        {
            Values = new Dictionary<string, FieldSource> { ["air_temperature"] = Some.Column("Club speed") with { Unit = "°F", Scale = 0.1, Offset = 2, Negate = true } },
        };
        // -(300 · 0.1 + 2) °F = -32 °F = -35.555… °C
        Assert.Equal(-320.0 / 9, Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;300\n", mapping).Numbers("air_temperature")[0], 10);
    }

    [Fact]
    public void AnImpossibleValueIsRejectedWithItsRawTextAndTheRowIsKept()
    {
        var file = Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;950,5\n2;Fern;07.09.2026 10:01:00;95,0\n", Some.Mapping);
        Assert.Equal(2, file.Count);
        var reject = Assert.Single(file.Rejects);
        Assert.Equal((2, "950,5", RejectReason.OutOfRange, false, "club_speed"), (reject.Line, reject.Raw, reject.Reason, reject.IsRow, reject.Variable));
        Assert.True(double.IsNaN(file.Numbers("club_speed")[0]));
    }

    [Fact]
    public void AValueAtTheVeryLimitIsPossibleInWhicheverUnitItComes()
    {
        var mapping = Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["carry"] = Some.Column("Club speed") with { Unit = "ft" } } };
        Assert.Empty(Mapped.File(Headings + $"1;Fern;07.09.2026 10:00:00;{(400 / 0.3048).ToString("R", new System.Globalization.CultureInfo("") { NumberFormat = { NumberDecimalSeparator = "," } })}\n", mapping).Rejects);
    }

    [Fact]
    public void ARowWithoutTimeIsRejectedWithItsRawText()
    {
        var file = Mapped.File(Headings + "1;Fern;---;95,0\n2;Fern;07.09.2026 25:00:00;95,0\n3;Fern;07.09.2026 10:01:00;95,0\n", Some.Mapping);
        Assert.Equal([(2, "1;Fern;---;95,0", RejectReason.TimeMissing), (3, "07.09.2026 25:00:00", RejectReason.Unparsable)],
            file.Rejects.Select(reject => (reject.Line, reject.Raw, reject.Reason)));
        Assert.Equal((2, 1), (file.Counts.Rejected, file.Counts.Taken));
    }

    [Fact]
    public void ARowWithoutPlayerIsRejected()
    {
        var file = Mapped.File(Headings + "1;NA;07.09.2026 10:00:00;95,0\n", Some.Mapping);
        Assert.Equal(RejectReason.ParticipantMissing, Assert.Single(file.Rejects).Reason);
    }

    [Fact]
    public void WithWholeRowsRejectedTheFirstBadCellIsBlamedTimeBeforeAll()
    {
        var mapping = Some.Mapping with
        {
            BadCells = BadCellPolicy.RejectRow,
            Values = new Dictionary<string, FieldSource>
            {
                ["ball_speed"] = Some.Column("Ball") with { Unit = "mph" },
                ["club_speed"] = Some.Column("Club") with { Unit = "mph" },
            },
        };
        var file = Mapped.File("No;Player;Club;Ball;When\n1;Fern;x;y;07.09.2026 10:00:00\n2;Fern;x;y;z\n3;Fern;90;999;07.09.2026 10:02:00\nq;Fern;90;120;07.09.2026 10:03:00\n4;Fern;90;120;07.09.2026 10:04:00\n", mapping);
        Assert.Equal([("Club", "x", true), ("When", "z", true), ("Ball", "999", true), ("No", "q", true)], file.Rejects.Select(reject => (reject.Column, reject.Raw, reject.IsRow)));
        Assert.Equal(1, file.Count);
    }

    [Fact]
    public void MissingTokensHoldOfMappingAndColumnAndAPhysicalZeroIsNoReading()
    {
        var mapping = Some.Mapping with
        {
            Values = new Dictionary<string, FieldSource>
            {
                ["club_speed"] = Some.Column("Club speed") with { Unit = "mph", Missing = ["9999"] },
                ["launch_angle"] = Some.Column("Launch") with { Unit = "deg" },
            },
        };
        var file = Mapped.File("No;Player;When;Club speed;Launch\n1;Fern;07.09.2026 10:00:00;na;0,0\n2;Fern;07.09.2026 10:01:00;9999;-0,0\n3;Fern;07.09.2026 10:02:00;0,0; \n4;Fern;07.09.2026 10:03:00;90;---\n", mapping);
        Assert.Empty(file.Rejects);
        Assert.Equal([double.NaN, double.NaN, double.NaN, 90 * 0.44704], file.Numbers("club_speed"));
        Assert.Equal([0, 0, double.NaN, double.NaN], file.Numbers("launch_angle"));
    }

    [Fact]
    public void IdentifiersStayTextWithLeadingZerosAndWordsAreOfTheList()
    {
        var mapping = Some.Mapping with
        {
            Values = new Dictionary<string, FieldSource>
            {
                ["bag_code"] = Some.Column("Bag"),
                ["lie"] = Some.Column("Lie") with { Words = new Dictionary<string, string> { ["Matte"] = "mat" } },
                ["warm"] = Some.Column("Warm"),
                ["balls"] = Some.Column("Balls"),
            },
        };
        var file = Mapped.File("No;Player;When;Bag;Lie;Warm;Balls\n1;Fern;07.09.2026 10:00:00;007;MATTE;yes;3\n2;Fern;07.09.2026 10:01:00;1e5;Turf;0;3,5\n3;Fern;07.09.2026 10:02:00;;ice;maybe;\n", mapping);
        Assert.Equal(["007", "1e5", null], file.Texts("bag_code"));
        Assert.Equal(["mat", "turf", null], file.Texts("lie"));
        Assert.Equal([1, 0, double.NaN], file.Numbers("warm"));
        Assert.Equal([3, double.NaN, double.NaN], file.Numbers("balls"));
        Assert.Equal([("3,5", RejectReason.Unparsable), ("ice", RejectReason.UnknownWord), ("maybe", RejectReason.Unparsable)], file.Rejects.Select(reject => (reject.Raw, reject.Reason)));
    }

    [Theory]
    [InlineData("Club speed (mph)", null, 44.704)]
    [InlineData("Club speed [m/s]", null, 100)]
    [InlineData("Club speed (km/h)", "km/h", 27.777777777777779)]
    public void TheUnitIsTakenFromTheHeadingEachTime(string heading, string? declared, double expected)
    {
        var mapping = Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["club_speed"] = Some.Column("Club speed") with { Unit = declared } } };
        var text = $"No;Player;When;{heading}\n1;Fern;07.09.2026 10:00:00;100\n";
        if (expected > 90)
            Assert.Equal(RejectReason.OutOfRange, Assert.Single(Mapped.File(text, mapping).Rejects).Reason);
        else
            Assert.Equal(expected, Mapped.File(text, mapping).Numbers("club_speed")[0], 10);
    }

    [Theory]
    [InlineData("Club speed (m/s)", "unit-mismatch")]
    [InlineData("Club speed (ft)", "unit-mismatch")]
    [InlineData("Speed", "column-missing")]
    public void AFileThatContradictsItsMappingIsHeld(string heading, string code)
    {
        var problem = Assert.Single(Mapped.Problems($"No;Player;When;{heading}\n1;Fern;07.09.2026 10:00:00;100\n", Some.Mapping with
        {
            Text = Some.Mapping.Text, Layout = new Layout { PreambleRows = 0, UnitsRow = false },
        }));
        Assert.Equal(code, problem.Code);
    }

    [Fact]
    public void AUnitThatNobodyNamesHoldsTheFile()
    {
        var mapping = Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["club_speed"] = Some.Column("Club speed") } };
        Assert.Equal("unit-unstated", Assert.Single(Mapped.Problems(Headings + "1;Fern;07.09.2026 10:00:00;100\n", mapping)).Code);
    }

    [Fact]
    public void ARowOfUnitsIsReadAndContradictionsHold()
    {
        var mapping = Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["club_speed"] = Some.Column("Club speed") } };
        var file = Mapped.File(Headings + ";;;[mph]\n1;Fern;07.09.2026 10:00:00;100\n", mapping);
        Assert.Equal(44.704, file.Numbers("club_speed")[0], 12);
        Assert.Equal(1, file.Counts.NotData["units"]);
        Assert.Equal("unit-mismatch", Assert.Single(Mapped.Problems(Headings + ";;;[km/h]\n1;Fern;07.09.2026 10:00:00;100\n", Some.Mapping)).Code);
    }

    [Fact]
    public void FootersAreNotDataAndPracticeIsKept()
    {
        var mapping = Some.Mapping with
        {
            NotData = [new RowRule("average", [new CellCondition(null, ["Average", "Std"], null, null)])],
            Practice = [new RowRule("practice", [new CellCondition("Club speed", null, null, true)])],
        };
        var file = Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;100\n2;Fern;07.09.2026 10:01:00;---\n\naverage;;;100\nStd;;;\n", mapping);
        Assert.Equal([false, true], Enumerable.Range(0, 2).Select(file.IsPractice));
        Assert.Equal((2, 1), (file.Counts.NotData["average"], file.Counts.NotData["blank"]));
    }

    [Fact]
    public void PreambleAndFileNameTellWhatHoldsForAllRows()
    {
        var mapping = Some.Mapping with
        {
            Files = @"(?<player>[^_]+)_(?<day>\d{8})\.csv",
            Participant = new FieldSource { FileGroup = "player" },
            Time = Some.Mapping.Time with { Parts = [new FieldSource { FileGroup = "day" }, Some.Column("Clock")], Format = "yyyyMMdd HH:mm" },
            Values = new Dictionary<string, FieldSource> { ["air_temperature"] = Some.Preamble(@"Temperature (?<value>\S+) °C") with { Unit = "°C" } },
        };
        var file = Mapped.File("Temperature 18,6 °C; mat\nNo;Clock\n1;10:00\n2;10:01\n", mapping with { Layout = new Layout { PreambleRows = 1 } }, name: "Fern_20260907.csv");
        Assert.Equal([18.6, 18.6], file.Numbers("air_temperature"));
        Assert.Equal(["2026-09-07T08:00:00", "2026-09-07T08:01:00"], file.Times());
        Assert.Equal(["Fern"], file.Aliases);
    }

    [Fact]
    public void HoursThatPassMidnightUnderOneDayBelongToTheNextDay()
    {
        var mapping = Some.Mapping with
        {
            Files = @"(?<day>\d{8})\.csv",
            Time = Some.Mapping.Time with { Parts = [new FieldSource { FileGroup = "day" }, Some.Column("Clock")], Format = "yyyyMMdd HH:mm" },
            Values = new Dictionary<string, FieldSource>(),
        };
        var file = Mapped.File("No;Player;Clock\n1;Fern;23:58\n2;Fern;00:01\n3;Fern;00:02\n", mapping, name: "20260907.csv");
        Assert.Equal(["2026-09-07T21:58:00", "2026-09-07T22:01:00", "2026-09-07T22:02:00"], file.Times());
        Assert.Contains(file.Remarks, remark => remark.Code == "midnight-crossed" && remark.Place.Row == 3);
    }

    // Clocks in Europe go back at 01:00 UTC on the last Sunday of October (Directive 2000/84/EC): 2026-10-25, local 02:00 to 03:00 occurs twice.
    [Fact]
    public void TimesThatOccurTwiceAreToldByTheStepOfTheClock()
    {
        var file = Mapped.File(Headings + "1;Fern;25.10.2026 02:40:00;90\n2;Fern;25.10.2026 02:55:00;90\n3;Fern;25.10.2026 02:05:00;90\n4;Fern;25.10.2026 03:10:00;90\n", Some.Mapping);
        Assert.Equal(["2026-10-25T00:40:00", "2026-10-25T00:55:00", "2026-10-25T01:05:00", "2026-10-25T02:10:00"], file.Times());
        Assert.Contains(file.Remarks, remark => remark.Code == "time-repeated-decided");
    }

    [Fact]
    public void TimesThatOccurTwiceWithoutEvidenceHoldTheFileUntilAPersonDecides()
    {
        const string text = Headings + "1;Fern;25.10.2026 02:40:00;90\n2;Fern;25.10.2026 02:55:00;90\n";
        Assert.Equal("time-repeated", Assert.Single(Mapped.Problems(text, Some.Mapping)).Code);
        Assert.Equal(["2026-10-25T01:40:00", "2026-10-25T01:55:00"], Mapped.File(text, Some.Mapping, AmbiguousChoice.Later).Times());
        Assert.Equal(["2026-10-25T00:40:00", "2026-10-25T00:55:00"], Mapped.File(text, Some.Mapping, AmbiguousChoice.Earlier).Times());
    }

    [Fact]
    public void ANumberThatRestartsAtTheStepIsNoEvidence() => Assert.Equal("time-repeated",
        Assert.Single(Mapped.Problems(Headings + "7;Fern;25.10.2026 02:40:00;90\n1;Fern;25.10.2026 02:05:00;90\n", Some.Mapping)).Code);

    [Fact]
    public void ALocalTimeThatNeverWasIsRejected()
    {
        var file = Mapped.File(Headings + "1;Fern;29.03.2026 02:30:00;90\n2;Fern;29.03.2026 03:30:00;90\n", Some.Mapping);
        var reject = Assert.Single(file.Rejects);
        Assert.Equal((2, RejectReason.TimeSkipped, "2026-03-29 02:30:00.000"), (reject.Line, reject.Reason, reject.Raw));
        Assert.Equal(["2026-03-29T01:30:00"], file.Times());
    }

    [Fact]
    public void AYearThatNobodyMeantIsRejected()
    {
        var file = Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;90\n2;Fern;08.09.2026 10:00:00;90\n3;Fern;09.09.2053 10:00:00;90\n4;Fern;10.09.2026 10:00:00;x\n", Some.Mapping);
        Assert.Equal([(4, RejectReason.TimeFarOff, true), (5, RejectReason.Unparsable, false)], file.Rejects.Select(reject => (reject.Line, reject.Reason, reject.IsRow)));
        Assert.Equal([1, 2, 4], file.Sequences());
    }

    [Fact]
    public void DaysAndMonthsThatCouldBeSwappedHoldTheFile()
    {
        var mapping = Some.Mapping with { Time = Some.Mapping.Time with { Format = null } };
        Assert.Equal("time-ambiguous", Assert.Single(Mapped.Problems(Headings + "1;Fern;07.09.2026 10:00:00;90\n", mapping)).Code);
        Assert.Equal(["2026-09-07T08:00:00", "2026-09-13T08:00:00"],
            Mapped.File(Headings + "1;Fern;07.09.2026 10:00:00;90\n2;Fern;13.09.2026 10:00:00;90\n", mapping).Times());
    }

    [Fact]
    public void AColumnOfWhichNoCellCanBeReadHoldsTheFile() => Assert.Equal("column-unreadable", Assert.Single(Mapped.Problems(
        Headings + "1;Fern;07.09.2026 10:00:00;a\n2;Fern;07.09.2026 10:01:00;b\n3;Fern;07.09.2026 10:02:00;c\n", Some.Mapping)).Code);

    [Fact]
    public void ARestartOfNumbersIsReportedAndLosesNothing()
    {
        var file = Mapped.File(Headings + "5;Fern;07.09.2026 10:00:00;90\n1;Fern;07.09.2026 10:01:00;90\n", Some.Mapping);
        Assert.Equal([5, 1], file.Sequences());
        Assert.Contains(file.Remarks, remark => remark.Code == "sequence-restarted");
    }

    [Fact]
    public void AColumnThatNobodyMappedIsReported()
    {
        var file = Mapped.File("No;Player;When;Club speed;Mystery;Known\n1;Fern;07.09.2026 10:00:00;90;x;y\n", Some.Mapping with { Ignore = ["known"] });
        Assert.Equal("Mystery", Assert.Single(file.Remarks, remark => remark.Code == "column-unmapped").Place.Column);
    }

    [Fact]
    public void ReadingsOfOneRecordMakeOneRow()
    {
        var mapping = Some.Mapping with
        {
            LongForm = new LongForm("Reading", "Value", "Unit"),
            Values = new Dictionary<string, FieldSource> { ["club_speed"] = Some.Column("Club"), ["carry"] = Some.Column("Carry") },
            Ignore = ["Battery"],
        };
        var file = Mapped.File(
            "No;Player;When;Reading;Value;Unit\n"
            + "1;Fern;07.09.2026 10:00:00;Club;100;mph\n1;Fern;07.09.2026 10:00:00;Carry;150;yd\n1;Fern;07.09.2026 10:00:00;Battery;80;%\n"
            + "2;Fern;07.09.2026 10:01:00;Carry;x;yd\n2;Fern;07.09.2026 10:01:00;Club;90;mph\n2;Fern;07.09.2026 10:01:00;Club;90;mph\n2;Fern;07.09.2026 10:01:00;Club;91;mph\n"
            + "3;Fern;;Club;91;mph\n", mapping);
        Assert.Equal(2, file.Count);
        Assert.Equal([2, 5], file.Lines);
        Assert.Equal([44.704, 90 * 0.44704], file.Numbers("club_speed"));
        Assert.Equal([150 * 0.9144, double.NaN], file.Numbers("carry"));
        Assert.Equal([(5, RejectReason.Unparsable), (8, RejectReason.ReadingTwice), (9, RejectReason.TimeMissing)], file.Rejects.Select(reject => (reject.Line, reject.Reason)));
        Assert.Equal((9, 3, 3, 3), (file.Counts.Read, file.Counts.Taken, file.Counts.Rejected, file.Counts.NotDataTotal));
    }
}
