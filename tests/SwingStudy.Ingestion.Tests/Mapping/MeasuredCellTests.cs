using SwingStudy.Domain.Sources;
using SwingStudy.Ingestion.Tests.Support;

namespace SwingStudy.Ingestion.Tests.Mapping;

/// <summary>Cells that hold more than a number.</summary>
public sealed class MeasuredCellTests
{
    private const string Head = "Player;When;No;Club speed\n";

    [Fact]
    public void TheUnitOfTheColumnMayStandBehindTheNumber()
    {
        var file = Mapped.File(Head + Row(1, "98,4 mph") + Row(2, "98,4") + Row(3, "98,4mph"), Some.Mapping);
        Assert.All(file.Numbers("club_speed"), speed => Assert.Equal(98.4 * 0.44704, speed, 12));
    }

    [Fact]
    public void AnotherUnitInACellIsARejectAndNoValue()
    {
        var file = Mapped.File(Head + Row(1, "98,4 mph") + Row(2, "44 m/s") + Row(3, "44 kg"), Some.Mapping);
        Assert.Equal([98.4 * 0.44704, double.NaN, double.NaN], file.Numbers("club_speed"));
        Assert.Equal(["44 m/s", "44 kg"], file.Rejects.Select(reject => reject.Raw));
    }

    [Fact]
    public void WhereUnitsStandInCellsEachCellIsConvertedFromItsOwnAndABareNumberIsAReject()
    {
        var file = Mapped.File(Head + Row(1, "100 mph") + Row(2, "160,9344 km/h") + Row(3, "44,704") + Row(4, "---"), With(new FieldSource { Column = "Club speed", HasUnitInCells = true }));
        Assert.Equal([44.704, 44.704, double.NaN, double.NaN], file.Numbers("club_speed").Select(speed => Math.Round(speed, 9)));
        var reject = Assert.Single(file.Rejects);
        Assert.Equal((4, "44,704"), (reject.Line, reject.Raw));
        Assert.Contains("with its unit", reject.Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3,5 R", 3.5)]
    [InlineData("3,5° L", -3.5)]
    [InlineData("L 3,5", -3.5)]
    [InlineData("3,5R", 3.5)]
    [InlineData("\u22123,5", -3.5)]
    [InlineData("-3,5 L", double.NaN)]
    [InlineData("3,5 X", double.NaN)]
    public void WordsGiveNumbersTheirSign(string cell, double expected)
    {
        var path = new FieldSource { Column = "Path", Unit = "deg", Signs = new Dictionary<string, bool> { ["L"] = true, ["R"] = false } };
        var file = Mapped.File("Player;When;No;Path\n" + Row(1, cell), Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["attack_angle"] = path } });
        Assert.Equal(expected, file.Numbers("attack_angle")[0]);
        Assert.Equal(double.IsNaN(expected) ? 1 : 0, file.Rejects.Count);
    }

    [Fact]
    public void EitherApostropheAndAnyBlankStandBetweenThousands()
    {
        var values = new Dictionary<string, FieldSource> { ["spin"] = new() { Column = "Spin", Unit = "/min" } };
        var text = "Player;When;No;Spin\n" + Row(1, "3'450,5") + Row(2, "3\u2019450,5");
        Assert.Equal([3450.5, 3450.5], Mapped.File(text, Some.Mapping with { Values = values, Text = Some.Mapping.Text with { Thousands = '\'' } }).Numbers("spin"));
        text = "Player;When;No;Spin\n" + Row(1, "3\u202F450,5") + Row(2, "3\u00A0450,5");
        Assert.Equal([3450.5, 3450.5], Mapped.File(text, Some.Mapping with { Values = values, Text = Some.Mapping.Text with { Thousands = ' ' } }).Numbers("spin"));
    }

    [Fact]
    public void TheDecimalSignIsFoundInCellsWithUnits()
    {
        var mapping = With(new FieldSource { Column = "Club speed", Unit = "mph" }) with { Text = new TextFormat { Encoding = "utf-8", Delimiter = ';' } };
        Assert.Equal([98.4 * 0.44704], Mapped.File(Head + Row(1, "98,4 mph"), mapping).Numbers("club_speed"));
        Assert.Equal([98.4 * 0.44704], Mapped.File(Head + Row(1, "98.4 mph"), mapping).Numbers("club_speed"));
    }

    [Fact]
    public void AFileOfLocalTimesWithoutAnyZoneIsHeld()
    {
        var mapping = Some.Mapping with { Time = new TimeRule { Parts = [Some.Column("When")], Format = "iso" } };
        Assert.Equal("zone-unstated", Assert.Single(Mapped.Problems("Player;When;No;Club speed\nAda;2026-05-01T10:00:00;1;90\n", mapping)).Code);
    }

    private static string Row(int number, string cell) => $"Ada;01.05.2026 10:00:0{number};{number};{cell}\n";

    private static SourceMapping With(FieldSource speed) => Some.Mapping with { Values = new Dictionary<string, FieldSource> { ["club_speed"] = speed } };
}
