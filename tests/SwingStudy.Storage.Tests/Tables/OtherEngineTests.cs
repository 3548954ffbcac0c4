using System.Globalization;
using DuckDB.NET.Data;
using SwingStudy.Domain.Tables;
using SwingStudy.Storage.Tests.Support;

namespace SwingStudy.Storage.Tests.Tables;

/// <summary>Files are read by DuckDB, an engine that trusts the files' statistics and skips row groups by them.</summary>
public sealed class OtherEngineTests : IDisposable
{
    private readonly TemporaryStudy _study = new();
    private readonly DuckDBConnection _engine = new("DataSource=:memory:;autoinstall_known_extensions=false;autoload_known_extensions=false");

    public OtherEngineTests()
    {
        var table = _study.Tables.Table(Some.Swings);
        using var writer = table.NewFile("P01", "u");
        for (var i = 0; i < 4; i++)
            writer.Append(Some.Rows("P01", 5000, start: 10_000 * i).Select([.. Enumerable.Range(0, 5000)]));
        writer.Append(Later());
        table.Add(writer.Complete());
        _engine.Open();
        Query("SET TimeZone = 'UTC'");
        Query($"CREATE VIEW swings AS SELECT * FROM read_parquet('{table.FullPath(table.Files()[0])}', hive_partitioning = false)");
    }

    public void Dispose()
    {
        _engine.Dispose();
        _study.Dispose();
    }

    [Theory]
    [InlineData("SELECT count(*) FROM swings", 20_003)]
    [InlineData("SELECT count(*) FROM swings WHERE struck_at = TIMESTAMPTZ '2026-11-25 13:00:00.123+00'", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE struck_at BETWEEN TIMESTAMPTZ '2026-11-25 13:00:00.123+00' AND TIMESTAMPTZ '2026-11-25 13:00:00.124+00'", 2)]
    [InlineData("SELECT count(*) FROM swings WHERE struck_at > TIMESTAMPTZ '2026-11-25 13:00:00.124+00'", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE struck_at < TIMESTAMPTZ '2026-08-29 10:41:00+00'", 8)]
    [InlineData("SELECT count(*) FROM swings WHERE club_speed = 30000.25", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE club_speed < -1", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE club_speed IS NULL", 4_001)]
    [InlineData("SELECT count(*) FROM swings WHERE swing_id = 'Zürich 🏌 end'", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE swing_id > 'Z'", 2)]
    [InlineData("SELECT count(*) FROM swings WHERE sequence = -9223372036854775808", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE sequence = 9223372036854775807", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE included", 6_665)]
    [InlineData("SELECT count(*) FROM swings WHERE len(force) = 3 AND force[2] IS NULL", 15_000)]
    [InlineData("SELECT count(*) FROM swings WHERE force = []", 1)]
    [InlineData("SELECT count(*) FROM swings WHERE participant = 'P01'", 20_003)]
    public void ARangeFilterFindsTheRows(string sql, long rows) => Assert.Equal(rows, Query(sql));

    [Fact]
    public void ColumnsHaveTheTypesOfTheTable() => Assert.Equal(
        "swing_id VARCHAR,participant VARCHAR,club_speed DOUBLE,sequence BIGINT,included BOOLEAN,struck_at TIMESTAMP WITH TIME ZONE,force DOUBLE[]",
        Query("SELECT string_agg(column_name || ' ' || column_type, ',') FROM (DESCRIBE swings)"));

    [Fact]
    public void SumsAgreeWithTheRowsInMemory()
    {
        var numbers = _study.Tables.Table(Some.Swings).Read(columns: ["club_speed"]).SelectMany(rows => rows.Numbers("club_speed")).Where(double.IsFinite);
        Assert.Equal(numbers.Sum(), (double)Query("SELECT sum(club_speed) FROM swings")!, 1e-3);
    }

    private static RowSet Later()
    {
        var rows = new RowSetBuilder(Some.Swings);
        rows.Add(("participant", "P01"), ("swing_id", "Zürich 🏌 end"), ("club_speed", -2.5), ("struck_at", Millis("2026-11-25T13:00:00.123Z")), ("sequence", long.MinValue));
        rows.Add(("participant", "P01"), ("swing_id", "Z" + new string('z', 90)), ("struck_at", Millis("2026-11-25T13:00:00.124Z")), ("sequence", long.MaxValue));
        rows.Add(("participant", "P01"), ("club_speed", -0.0), ("struck_at", Millis("2026-11-25T13:00:00.125Z")), ("force", Array.Empty<double>()), ("included", true));
        return rows.Build();
    }

    private static long Millis(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture).ToUnixTimeMilliseconds();

    private object? Query(string sql)
    {
        using var command = _engine.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }
}
