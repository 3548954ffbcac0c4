using System.Globalization;
using System.Text;
using CsCheck;
using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Mapping;

/// <summary>Random messy files are written together with what must be read from them.</summary>
public sealed class AccountingTests
{
    private static readonly Gen<Line> AnyLine = Gen.Frequency(
        (12, Gen.Select(Gen.Int[0, 2], Gen.Int[0, 9999], (player, tenths) => Line.Good(player, tenths))),
        (2, Gen.Select(Gen.Int[0, 2], Gen.OneOf("NA", "---", "", " na "), (player, token) => new Line(Kind.Taken, player, token, null))),
        (2, Gen.Select(Gen.Int[0, 2], Gen.OneOf("x", "1,2,3", "99999,9", "#REF!"), (player, raw) => new Line(Kind.BadCell, player, raw, null))),
        (1, Gen.Const(new Line(Kind.NoTime, 0, "90", null))),
        (1, Gen.Const(new Line(Kind.NoPlayer, 0, "90", null))),
        (1, Gen.Const(new Line(Kind.Footer, 0, "", null))),
        (1, Gen.Const(new Line(Kind.Blank, 0, "", null))),
        (1, Gen.Const(new Line(Kind.Ragged, 0, "", null))),
        (1, Gen.Const(new Line(Kind.Heading, 0, "", null))));

    private enum Kind
    {
        Taken,
        BadCell,
        NoTime,
        NoPlayer,
        Footer,
        Blank,
        Ragged,
        Heading,
    }

    [Fact]
    public void EachLineOfAMessyFileIsTakenRejectedOrNotDataAndNoValueIsLost() =>
        Gen.Select(AnyLine.List[1, 60], Gen.Bool, Gen.Bool).Sample((lines, rejectsRows, crlf) =>
        {
            var mapping = Some.Mapping with
            {
                BadCells = rejectsRows ? BadCellPolicy.RejectRow : BadCellPolicy.RejectCell,
                NotData = [new RowRule("average", [new CellCondition("No", ["Average"], null, null)])],
            };

            // A column without one good value would rightly hold the file.
            lines = [Line.Good(0, 900), .. lines];
            var text = new StringBuilder("made by hand;;;;\nNo;Player;When;Club speed;Remark\n");
            var expected = new List<(int Line, double Value)>();
            for (var i = 0; i < lines.Count; i++)
                Write(lines[i], i, text, rejectsRows, expected);
            var file = Mapped.File(crlf ? text.ToString().Replace("\n", "\r\n", StringComparison.Ordinal) : text.ToString(), mapping with { Layout = new Layout { PreambleRows = 1 } });

            Assert.Equal(expected.Select(row => row.Line), file.Lines);
            Assert.Equal(expected.Select(row => row.Value), file.Numbers("club_speed"));
            Assert.Equal(lines.Count + 2, file.Counts.Read);
            Assert.Equal(expected.Count, file.Counts.Taken);
            Assert.Equal(lines.Count(line => line.Kind is Kind.NoTime or Kind.NoPlayer or Kind.Ragged || (rejectsRows && line.Kind == Kind.BadCell)), file.Counts.Rejected);
            Assert.Equal(file.Counts.Rejected, file.Rejects.Count(reject => reject.IsRow));
            Assert.Equal(lines.Count(line => line.Kind == Kind.BadCell), file.Rejects.Count(reject => reject.Variable == "club_speed"));
        }, iter: 300);

    [Fact]
    public void ThreadsDoNotChangeTheResult()
    {
        var text = new StringBuilder("No;Player;When;Club speed;Remark\n");
        for (var i = 0; i < 60_000; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i};Fern;07.09.2026 {i / 3600 % 24:00}:{i / 60 % 60:00}:{i % 60:00};{(i % 97 == 0 ? "x" : "9" + (i % 10))};{i % 13}\n");
        var one = Mapped.File(text.ToString(), Some.Mapping, threads: 1);
        var four = Mapped.File(text.ToString(), Some.Mapping, threads: 4);
        Assert.Equal(one.Lines, four.Lines);
        Assert.Equal(one.Numbers("club_speed"), four.Numbers("club_speed"));
        Assert.Equal(one.Rejects, four.Rejects);
    }

    private static void Write(Line line, int position, StringBuilder text, bool rejectsRows, List<(int, double)> expected)
    {
        string[] players = ["Fern", "Moss", "\"Reed, the \"\"tall\"\"\""];
        var time = string.Create(CultureInfo.InvariantCulture, $"07.09.2026 10:{position / 60:00}:{position % 60:00}");
        switch (line.Kind)
        {
            case Kind.Taken or Kind.BadCell:
                text.Append(CultureInfo.InvariantCulture, $"{position};{players[line.Player]};{time};{line.Cell};\n");
                if (line.Kind == Kind.Taken || !rejectsRows)
                    expected.Add((position + 3, line.Value is { } mph ? mph * 0.44704 : double.NaN));
                break;
            case Kind.NoTime: text.Append(CultureInfo.InvariantCulture, $"{position};Fern;7 September;{line.Cell};\n"); break;
            case Kind.NoPlayer: text.Append(CultureInfo.InvariantCulture, $"{position};---;{time};{line.Cell};\n"); break;
            case Kind.Footer: text.Append("average;;;90,0;\n"); break;
            case Kind.Blank: text.Append(";;;;\n"); break;
            case Kind.Ragged: text.Append(CultureInfo.InvariantCulture, $"{position};Fern;{time};90;;;;;9\n"); break;
            default: text.Append("No;Player;When;Club speed;Remark\n"); break;
        }
    }

    private sealed record Line(Kind Kind, int Player, string Cell, double? Value)
    {
        /// <summary>Tenths of miles an hour; zero is no reading.</summary>
        public static Line Good(int player, int tenths)
        {
            var mph = tenths % 1500;
            return new Line(Kind.Taken, player, string.Create(CultureInfo.InvariantCulture, $"{mph / 10},{mph % 10}"), mph == 0 ? null : mph / 10.0);
        }
    }
}
