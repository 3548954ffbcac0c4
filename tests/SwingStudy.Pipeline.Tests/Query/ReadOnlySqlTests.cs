using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Tables;
using SwingStudy.Pipeline.Query;

namespace SwingStudy.Pipeline.Tests.Query;

public class ReadOnlySqlTests
{
    private static readonly QueryView Empty = new("findings", StudyTables.Findings, []);

    [Fact]
    public void ATableWithoutFilesHasItsColumnsAndNoRows()
    {
        using var result = Value(ReadOnlySql.Run("SELECT * FROM findings", [Empty]));
        Assert.Equal(StudyTables.Findings.Columns.Select(column => column.Name), result.Columns);
        Assert.Empty(result.Rows());
    }

    [Fact]
    public void AnExpressionIsComputed()
    {
        using var result = Value(ReadOnlySql.Run("SELECT 6 * 7 AS answer, NULL AS nothing", [Empty]));
        var row = Assert.Single(result.Rows());
        Assert.Equal(42, row[0]);
        Assert.Null(row[1]);
    }

    [Theory]
    [InlineData("CREATE TABLE t (a INT)")]
    [InlineData("DROP VIEW findings")]
    [InlineData("COPY (SELECT 1) TO '/tmp/out.csv'")]
    [InlineData("INSTALL httpfs")]
    [InlineData("ATTACH 'other.db'")]
    [InlineData("SET threads = 1")]
    [InlineData("PRAGMA database_list")]
    public void AStatementThatIsNoSelectIsRefused(string sql) => Assert.Equal("sql-read-only", Code(ReadOnlySql.Run(sql, [Empty])));

    [Fact]
    public void TwoStatementsAreRefused() => Assert.Equal("sql-several-statements", Code(ReadOnlySql.Run("SELECT 1; SELECT 2", [Empty])));

    [Fact]
    public void FilesOutsideTheViewsCannotBeRead()
    {
        var outside = Path.GetTempFileName();
        File.WriteAllText(outside, "a,b\n1,2\n");
        var problem = Problem(ReadOnlySql.Run($"SELECT * FROM read_csv('{outside}')", [Empty]));
        Assert.Equal("sql-invalid", problem.Code);
        Assert.Contains("disabled", problem.Found, StringComparison.OrdinalIgnoreCase);
        File.Delete(outside);
    }

    [Fact]
    public void AMisspeltTableIsAProblemThatNamesTheTables()
    {
        var problem = Problem(ReadOnlySql.Run("SELECT * FROM finding", [Empty]));
        Assert.Contains("findings", problem.Mend, StringComparison.Ordinal);
    }

    private static QueryResult Value(Outcome<QueryResult> outcome) =>
        outcome.Succeeded(out var value) ? value : throw new Xunit.Sdk.XunitException(outcome.Problems[0].ToString());

    private static Problem Problem(Outcome<QueryResult> outcome) => Assert.Single(outcome.Problems);

    private static string Code(Outcome<QueryResult> outcome) => Problem(outcome).Code;
}
