namespace SwingStudy.Ingestion.Mapping.Times;

/// <summary>Days of the proleptic Gregorian calendar.</summary>
internal static class CivilDays
{
    /// <summary>Days from 1970-01-01 to a date after year 0. Counts years from March, so that the leap day comes last.</summary>
    public static long Since1970(int year, int month, int day)
    {
        var marchYear = month <= 2 ? year - 1 : year;
        var era = marchYear / 400;
        var yearOfEra = marchYear - (era * 400);
        var dayOfYear = (((153 * (month + (month > 2 ? -3 : 9))) + 2) / 5) + day - 1;
        var dayOfEra = (yearOfEra * 365) + (yearOfEra / 4) - (yearOfEra / 100) + dayOfYear;
        return (era * 146_097L) + dayOfEra - 719_468;
    }
}
