using Apache.Arrow;
using Apache.Arrow.Types;
using Microsoft.Data.Analysis;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests;

public sealed class StudyTests : IDisposable
{
    private readonly TemporaryStudy _study = new();
    private readonly Study _opened;

    public StudyTests()
    {
        var table = _study.Tables.Table(Some.Swings);
        table.Add(table.File("P01", "a", Some.Rows("P01", 6)));
        table.Add(table.File("P02", "b", Some.Rows("P02", 4)));
        _opened = Study.Open(_study.Folder.Root);
    }

    public void Dispose() => _study.Dispose();

    [Fact]
    public void TablesAndVersionsAreFound()
    {
        Assert.Equal(["swings"], _opened.Tables);
        Assert.Equal(1, _opened.Table("swings").Version);
        Assert.Equal(10, _opened.Table("swings").Rows().Sum(rows => rows.Count));
        Assert.Equal(6, _opened.Table("swings", version: 0).Rows().Sum(rows => rows.Count));
        Assert.Equal(4, _opened.Table("swings").Rows(participant: "P02").Sum(rows => rows.Count));
        Assert.Throws<KeyNotFoundException>(() => _opened.Table("swing"));
        Assert.Throws<ArgumentOutOfRangeException>(() => _opened.Table("swings", version: 9));
        Assert.Throws<DirectoryNotFoundException>(() => Study.Open(Path.Combine(_study.Folder.Root, "other")));
    }

    [Fact]
    public void ArrowBatchesHoldValuesGapsTitlesAndUnits()
    {
        var batch = _opened.Table("swings").ToArrow().First();
        Assert.Equal(6, batch.Length);
        var speed = batch.Schema.GetFieldByName("club_speed");
        Assert.Equal("m/s", speed.Metadata["unit"]);
        Assert.Equal("Club speed", speed.Metadata["title"]);
        Assert.Equal([40, 40.25, 40.5, 40.75, null, 41.25], ((DoubleArray)batch.Column("club_speed")).ToList(includeNulls: true));
        Assert.Equal("P01-5", ((StringArray)batch.Column("swing_id")).GetString(5));
        Assert.Equal("UTC", ((TimestampType)batch.Schema.GetFieldByName("struck_at").DataType).Timezone);
        Assert.Equal(1_788_000_030_000L, ((TimestampArray)batch.Column("struck_at")).GetValue(1));
        var force = (ListArray)batch.Column("force");
        Assert.True(force.IsNull(3));
        Assert.Equal([5.0, null, 5.5], ((DoubleArray)force.GetSlicedValues(5)).ToList(includeNulls: true));
        Assert.Equal([null, false, true], ((BooleanArray)batch.Column("included")).Take(3));
    }

    [Fact]
    public void ADataFrameHoldsAllRowsAndTurnsIntoArrowAgain()
    {
        DataFrame frame = _opened.Table("swings").ToDataFrame();
        Assert.Equal(10, frame.Rows.Count);
        Assert.Equal(["swing_id", "participant", "club_speed", "sequence", "included", "struck_at"], frame.Columns.Select(column => column.Name));
        Assert.Equal("P02-3", frame["swing_id"][9]);
        Assert.Null(frame["club_speed"][4]);
        Assert.Equal(41.25, frame["club_speed"][5]);
        Assert.Equal(DateTimeOffset.FromUnixTimeMilliseconds(1_788_000_000_000).UtcDateTime, frame["struck_at"][0]);
        Assert.Equal(10, frame.ToArrowRecordBatches().Sum(batch => batch.Length));
    }
}
