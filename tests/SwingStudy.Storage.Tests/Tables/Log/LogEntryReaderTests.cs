using SwingStudy.Storage.Tables.Log;

namespace SwingStudy.Storage.Tests.Tables.Log;

public sealed class LogEntryReaderTests
{
    [Theory]
    [InlineData("""{"numRecords":7,"minValues":{"a":1}}""", 7)]
    [InlineData("""{"minValues":{"numRecords":3,"a":[1,{"numRecords":4}]},"nullCount":{},"numRecords":9}""", 9)]
    [InlineData("""{"minValues":{"numRecords":3}}""", 0)]
    [InlineData("{}", 0)]
    [InlineData(null, 0)]
    public void RowsAreThoseOfTheFileWhereverTheNumberStands(string? statistics, long rows) => Assert.Equal(rows, LogEntryReader.Rows(statistics));
}
