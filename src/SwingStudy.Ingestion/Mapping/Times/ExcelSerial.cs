namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Serial days of a workbook in the 1900 epoch: day 1 is 1900-01-01, and a day 60 that never was is counted (ECMA-376 part 1, 18.17.4.1).</summary>
internal static class ExcelSerial
{
    private const double DayOf1970 = 25_569;

    /// <summary>Milliseconds since 1970 local, rounded to the millisecond because serials are binary fractions of a day.</summary>
    public static bool TryToLocalMillis(double days, out long localMillis)
    {
        localMillis = 0;

        // Before March 1900 the two ways of counting disagree; no export reaches back that far.
        if (days is < 61 or > 110_000)
            return false;
        localMillis = (long)Math.Round((days - DayOf1970) * 86_400_000);
        return true;
    }
}
